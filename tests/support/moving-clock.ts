import { laterBy } from '../../src/domain/calendar/instant.js';
import { londonDateAt } from '../../src/domain/calendar/plain-date.js';
import type { Clock } from '../../src/usecases/context.js';

/** A clock that a test puts forward from day to day. */
export interface MovingClock extends Clock {
  /** Ten o'clock in the morning (UTC) of a day, such as `2026-04-20`. */
  readonly moveTo: (day: string) => void;
  /** So many seconds later. */
  readonly moveBy: (seconds: number) => void;
}

/** A clock that stands at ten in the morning of a day until it is moved. */
export function movingClock(firstDay: string): MovingClock {
  let instant = tenOn(firstDay);
  return {
    now: () => instant,
    today: () => londonDateAt(instant),
    moveTo: (day) => {
      instant = tenOn(day);
    },
    moveBy: (seconds) => {
      instant = laterBy(instant, seconds);
    },
  };
}

function tenOn(day: string): string {
  return `${day}T10:00:00.000Z`;
}
