import { britishDate } from './british-date.js';
import { laterBy } from './instant.js';
import { londonDateAt } from './plain-date.js';
import type { PlainDate } from './plain-date.js';

const HOUR_S = 3600;

/**
 * An instant as a clock in London shows it.
 *
 * @param instant UTC ISO text
 * @example londonTime('2026-07-01T09:05:00.000Z') -> '1 July 2026, 10:05'
 */
export function londonTime(instant: string): string {
  const parts = CLOCK.formatToParts(new Date(instant));
  const partNamed = (type: Intl.DateTimeFormatPartTypes): string =>
    parts.find((part) => part.type === type)?.value ?? '';
  return `${britishDate(londonDateAt(instant))}, ${partNamed('hour')}:${partNamed('minute')}`;
}

// Read by its parts: how a locale joins them differs between releases of the runtime.
const CLOCK = new Intl.DateTimeFormat('en-GB', {
  timeZone: 'Europe/London',
  numberingSystem: 'latn',
  hourCycle: 'h23',
  hour: '2-digit',
  minute: '2-digit',
});

/**
 * The instant at which a date begins in London.
 *
 * @example londonMidnight('2026-07-01') -> '2026-06-30T23:00:00.000Z'; of '2026-12-01' -> '2026-12-01T00:00:00.000Z'
 */
export function londonMidnight(date: PlainDate): string {
  const utc = `${date}T00:00:00.000Z`;
  const hourBefore = laterBy(utc, -HOUR_S);
  return londonDateAt(hourBefore) === date ? hourBefore : utc;
}
