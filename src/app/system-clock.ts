import { londonDateAt } from '../domain/calendar/plain-date.js';
import type { Clock } from '../usecases/context.js';

const DAY_MS = 86_400_000;

/** The clock of the machine: instants in UTC, today as it is in London. */
export const SYSTEM_CLOCK = {
  now: () => new Date().toISOString(),
  today: () => londonDateAt(new Date().toISOString()),
  /** The instant a number of days from now. */
  inDays: (days: number) => new Date(Date.now() + days * DAY_MS).toISOString(),
} satisfies Clock & { inDays: (days: number) => string };

/** A clock that stands at one instant, for demonstrations and tests that must come out the same. */
export function clockAt(instant: string): Clock {
  return { now: () => instant, today: () => londonDateAt(instant) };
}
