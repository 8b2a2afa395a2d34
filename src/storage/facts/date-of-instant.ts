import { londonDateAt } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';

const known = new Map<string, PlainDate>();
const MOST_REMEMBERED = 20_000;

/**
 * The date in London of a stored instant. Clocks there change on the hour, so that an hour has one date, which is kept:
 * asking the calendar of the runtime is a hundred times as slow.
 *
 * @param instant UTC ISO text, such as `2026-06-30T23:30:00.000Z`
 */
export function dateOfInstant(instant: string): PlainDate {
  const hour = instant.slice(0, 13);
  const remembered = known.get(hour);
  if (remembered !== undefined) return remembered;
  const date = londonDateAt(instant);
  if (known.size >= MOST_REMEMBERED) known.clear();
  known.set(hour, date);
  return date;
}
