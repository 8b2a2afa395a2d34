import { addDays, daysInMonth, fromParts, parsePlainDate, partsOf } from './plain-date.js';
import type { PlainDate } from './plain-date.js';

/** A span of days, first and last day included, with the label it was asked for by. */
export interface Period {
  readonly kind: 'quarter' | 'year' | 'dates';
  /** `2026-27-Q1`, `2026-27`, or `2026-04-01..2026-05-31`. */
  readonly label: string;
  readonly firstDay: PlainDate;
  readonly lastDay: PlainDate;
}

/**
 * Reads a reporting period.
 *
 * @param text a UK financial quarter `2026-27-Q1` (1 April to 30 June 2026), a financial year `2026-27`,
 *   or two dates `2026-04-01..2026-05-31`, both included
 * @returns the period, or null when the text is none of these, the years do not follow each other, or the dates are reversed
 * @example parsePeriod('2025-26-Q4') -> 2026-01-01 to 2026-03-31
 */
export function parsePeriod(text: string): Period | null {
  const financial = /^(\d{4})-(\d{2})(?:-Q([1-4]))?$/.exec(text);
  if (financial !== null) {
    const startYear = Number(financial[1]);
    if (startYear < 1900 || startYear > 2900) return null;
    if ((startYear + 1) % 100 !== Number(financial[2])) return null;
    return financial[3] === undefined
      ? financialYear(startYear)
      : financialQuarter(startYear, Number(financial[3]));
  }
  const [first, last, ...rest] = text.split('..').map(parsePlainDate);
  if (!first || !last || rest.length > 0 || first > last) return null;
  return { kind: 'dates', label: text, firstDay: first, lastDay: last };
}

/** The financial year that starts on 1 April of `startYear`. */
export function financialYear(startYear: number): Period {
  return {
    kind: 'year',
    label: yearLabel(startYear),
    firstDay: fromParts(startYear, 4, 1),
    lastDay: fromParts(startYear + 1, 3, 31),
  };
}

/**
 * Quarter 1 to 4 of the financial year that starts on 1 April of `startYear`; Q4 is January to March.
 *
 * @throws RangeError when there is no such quarter
 * @example financialQuarter(2025, 4) -> 2026-01-01 to 2026-03-31
 */
export function financialQuarter(startYear: number, quarter: number): Period {
  if (![1, 2, 3, 4].includes(quarter)) throw new RangeError('A financial year has quarters 1 to 4.');
  const year = quarter === 4 ? startYear + 1 : startYear;
  const firstMonth = quarter === 4 ? 1 : 1 + quarter * 3;
  return {
    kind: 'quarter',
    label: `${yearLabel(startYear)}-Q${quarter}`,
    firstDay: fromParts(year, firstMonth, 1),
    lastDay: fromParts(year, firstMonth + 2, daysInMonth(year, firstMonth + 2)),
  };
}

/** The financial quarter in which a date falls. @example quarterOf('2026-03-31') -> 2025-26-Q4 */
export function quarterOf(date: PlainDate): Period {
  const { year, month } = partsOf(date);
  return financialQuarter(month >= 4 ? year : year - 1, Math.floor(((month + 8) % 12) / 3) + 1);
}

/** The last financial quarter that ended before a date. @example latestClosedQuarter('2026-11-25') -> 2026-27-Q2 */
export function latestClosedQuarter(today: PlainDate): Period {
  return quarterOf(addDays(quarterOf(today).firstDay, -1));
}

/** Whether a date lies within a period, first and last day included. */
export function isWithin(period: Period, date: PlainDate): boolean {
  return date >= period.firstDay && date <= period.lastDay;
}

function yearLabel(startYear: number): string {
  return `${startYear}-${String((startYear + 1) % 100).padStart(2, '0')}`;
}
