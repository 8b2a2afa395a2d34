import { londonDateAt } from '../domain/calendar/plain-date.js';
import type { PlainDate } from '../domain/calendar/plain-date.js';
import type { Clock } from '../usecases/context.js';

const DAY_MS = 86_400_000;

/** The clock of the machine: instants in UTC, today as it is in London. */
export const SYSTEM_CLOCK = {
  now: () => new Date().toISOString(),
  today: londonDateByHour(() => new Date().toISOString()),
  /** The instant a number of days from now. */
  inDays: (days: number) => new Date(Date.now() + days * DAY_MS).toISOString(),
} satisfies Clock & { inDays: (days: number) => string };

/** A clock that stands at one instant, for demonstrations and tests that must come out the same. */
export function clockAt(instant: string): Clock {
  return { now: () => instant, today: londonDateByHour(() => instant) };
}

/** London keeps whole hours from UTC, so that its date is worked out once in an hour and not at every request. */
function londonDateByHour(now: () => string): () => PlainDate {
  let known: { readonly hour: string; readonly date: PlainDate } | null = null;
  return () => {
    const instant = now();
    const hour = instant.slice(0, 'YYYY-MM-DDTHH'.length);
    if (known?.hour !== hour) known = { hour, date: londonDateAt(instant) };
    return known.date;
  };
}
