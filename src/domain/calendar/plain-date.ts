/** A calendar date without time or zone, `YYYY-MM-DD`; sorts as text. */
export type PlainDate = string & { readonly __brand: 'PlainDate' };

const DAY_MS = 86_400_000;
const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * Reads a calendar date.
 *
 * @param text `YYYY-MM-DD`, years 1800 to 2999
 * @returns the date, or null when the text is not a date that exists
 * @example parsePlainDate('2025-02-29') -> null
 */
export function parsePlainDate(text: string): PlainDate | null {
  const match = SHAPE.exec(text);
  if (match === null) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < 1800 || year > 2999 || month < 1 || month > 12) return null;
  if (day < 1 || day > daysInMonth(year, month)) return null;
  return text as PlainDate;
}

/**
 * A calendar date known to be right, such as a literal in a rule or a stored value.
 *
 * @throws RangeError when the text is not a date that exists
 */
export function plainDate(text: string): PlainDate {
  const date = parsePlainDate(text);
  if (date === null) throw new RangeError('Not a calendar date (YYYY-MM-DD).');
  return date;
}

/**
 * The date a number of days later (earlier when negative).
 *
 * @param days a whole number
 * @throws RangeError when the number is not whole, or the result lies outside the years 1800 to 2999
 * @example addDays('2024-02-28', 2) -> '2024-03-01'
 */
export function addDays(date: PlainDate, days: number): PlainDate {
  if (!Number.isSafeInteger(days)) throw new RangeError('Days must be a whole number.');
  return fromEpochDay(epochDay(date) + days);
}

/**
 * Whole days from one date to another: 0 for the same day, negative when `to` is earlier.
 *
 * @example daysBetween('2026-04-01', '2026-06-30') -> 90
 */
export function daysBetween(from: PlainDate, to: PlainDate): number {
  return epochDay(to) - epochDay(from);
}

/**
 * The same day of the month a number of months later (earlier when negative); the last day of the month where that
 * day does not exist.
 *
 * @param months a whole number
 * @throws RangeError when the number is not whole, or the result lies outside the years 1800 to 2999
 * @example addMonths('2025-01-31', 1) -> '2025-02-28'
 */
export function addMonths(date: PlainDate, months: number): PlainDate {
  const { year, month, day } = partsOf(date);
  const index = year * 12 + (month - 1) + months;
  const [targetYear, targetMonth] = [Math.floor(index / 12), (index % 12) + 1];
  return fromParts(targetYear, targetMonth, Math.min(day, daysInMonth(targetYear, targetMonth)));
}

/**
 * Age in completed years on a date. A person born on 29 February completes a year on 1 March in common years.
 *
 * @example ageInYears('1956-06-15', '2026-06-14') -> 69
 */
export function ageInYears(bornOn: PlainDate, onDate: PlainDate): number {
  const [born, on] = [partsOf(bornOn), partsOf(onDate)];
  const hadBirthday = on.month > born.month || (on.month === born.month && on.day >= born.day);
  return on.year - born.year - (hadBirthday ? 0 : 1);
}

/** Year, month (1 to 12) and day of a date. */
export function partsOf(date: PlainDate): { year: number; month: number; day: number } {
  return { year: Number(date.slice(0, 4)), month: Number(date.slice(5, 7)), day: Number(date.slice(8, 10)) };
}

/** Builds a date from year, month (1 to 12) and day. @throws RangeError when it does not exist */
export function fromParts(year: number, month: number, day: number): PlainDate {
  const pad = (value: number, width: number): string => String(value).padStart(width, '0');
  return plainDate(`${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`);
}

/** Days in a month of the Gregorian calendar, month 1 to 12. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/**
 * The date in London at an instant: the day on which work is done, whatever the zone of the server.
 *
 * @param instant UTC ISO text ending in Z, such as `2026-03-29T23:30:00.000Z`
 * @throws RangeError when the text is not a UTC instant; without the Z it would be read in the zone of the server
 * @example londonDateAt('2026-06-30T23:30:00.000Z') -> '2026-07-01'
 */
export function londonDateAt(instant: string): PlainDate {
  if (!UTC_INSTANT.test(instant)) throw new RangeError('Not a UTC instant (ISO text ending in Z).');
  const parts = LONDON.formatToParts(new Date(instant));
  const partNamed = (type: Intl.DateTimeFormatPartTypes): number =>
    Number(parts.find((part) => part.type === type)?.value);
  return fromParts(partNamed('year'), partNamed('month'), partNamed('day'));
}

const UTC_INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?Z$/;

// Read by its parts: how a locale orders and separates them differs between releases of the runtime.
const LONDON = new Intl.DateTimeFormat('en-GB', {
  timeZone: 'Europe/London',
  calendar: 'gregory',
  numberingSystem: 'latn',
  year: 'numeric',
  month: 'numeric',
  day: 'numeric',
});

const knownDays = new Map<PlainDate, number>();
const MOST_DAYS_KNOWN = 50_000;

/** A report asks for the number of each of a few thousand days many thousand times. */
function epochDay(date: PlainDate): number {
  const known = knownDays.get(date);
  if (known !== undefined) return known;
  if (knownDays.size >= MOST_DAYS_KNOWN) knownDays.clear();
  // A date without a time is read as of UTC.
  const day = Date.parse(date) / DAY_MS;
  knownDays.set(date, day);
  return day;
}

function fromEpochDay(day: number): PlainDate {
  return plainDate(new Date(day * DAY_MS).toISOString().slice(0, 10));
}

/** Day of the week, 1 for Monday to 7 for Sunday (ISO 8601). @example weekdayOf('2026-11-25') -> 3, a Wednesday */
export function weekdayOf(date: PlainDate): number {
  // Day 0 of the epoch, 1 January 1970, was a Thursday.
  const sinceMonday = (((epochDay(date) + 3) % 7) + 7) % 7;
  return sinceMonday + 1;
}
