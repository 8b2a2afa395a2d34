import { addDays, addMonths, daysBetween } from './plain-date.js';
import type { PlainDate } from './plain-date.js';
import { financialYear, quarterOf } from './period.js';
import type { Period } from './period.js';

/**
 * The period before one: the quarter, the financial year, or as many days as it has itself.
 *
 * @example formerPeriod(2026-27-Q1) -> 2025-26-Q4; formerPeriod(2026-04-01..2026-04-30) -> 2026-03-02..2026-03-31
 */
export function formerPeriod({ kind, firstDay, lastDay }: Period): Period {
  const dayBefore = addDays(firstDay, -1);
  switch (kind) {
    case 'quarter':
      return quarterOf(dayBefore);
    case 'year':
      return financialYear(Number(firstDay.slice(0, 4)) - 1);
    case 'dates':
      return between(addDays(dayBefore, -daysBetween(firstDay, lastDay)), dayBefore);
  }
}

/**
 * The same period a year earlier.
 *
 * @returns null for a year: the year before it is its former period
 * @example aYearEarlier(2026-27-Q1) -> 2025-26-Q1
 */
export function aYearEarlier({ kind, firstDay, lastDay }: Period): Period | null {
  switch (kind) {
    case 'quarter':
      return quarterOf(addMonths(firstDay, -12));
    case 'year':
      return null;
    case 'dates':
      return between(addMonths(firstDay, -12), addMonths(lastDay, -12));
  }
}

/** So many financial quarters in a row, the earliest first, the last being the one in which a date falls. */
export function quartersUpTo(date: PlainDate, count: number): readonly Period[] {
  const last = quarterOf(date);
  return Array.from({ length: count }, (_, index) =>
    quarterOf(addMonths(last.firstDay, -3 * (count - 1 - index))),
  );
}

/**
 * The data cut by which an earlier period is seen as long after its end as a later one is: a period that had more time for
 * people to start and to finish would look better than it was.
 *
 * @param asAt the cut of the later period, before its end where it is not over
 * @returns never before the first day of the earlier period
 * @example sameAgeCut(2025-26-Q4, 2026-27-Q1, 2026-09-20) -> 82 days after 31 March: 2026-06-21
 */
export function sameAgeCut(earlier: Period, later: Period, asAt: PlainDate): PlainDate {
  const cut = addDays(earlier.lastDay, daysBetween(later.lastDay, asAt));
  return cut < earlier.firstDay ? earlier.firstDay : cut;
}

function between(firstDay: PlainDate, lastDay: PlainDate): Period {
  return { kind: 'dates', label: `${firstDay}..${lastDay}`, firstDay, lastDay };
}
