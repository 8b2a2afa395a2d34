import { londonDateAt } from '../domain/calendar/plain-date.js';
import type { Clock } from '../usecases/context.js';

/** The clock of the machine: instants in UTC, today as it is in London. */
export const SYSTEM_CLOCK: Clock = {
  now: () => new Date().toISOString(),
  today: () => londonDateAt(new Date().toISOString()),
};

/** A clock that stands at one instant, for demonstrations that must come out the same. */
export function clockAt(instant: string): Clock {
  return { now: () => instant, today: () => londonDateAt(instant) };
}
