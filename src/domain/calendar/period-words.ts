import { britishDate, monthName } from './british-date.js';
import type { Period } from './period.js';
import { partsOf } from './plain-date.js';

/**
 * A period by its label, with its months for whoever does not count in financial quarters; two dates as people write them.
 *
 * @example periodWords(2026-27-Q1) -> '2026-27-Q1 (April to June 2026)'
 * @example periodWords(2026-27) -> '2026-27 (April 2026 to March 2027)'
 * @example periodWords(2026-04-01..2026-05-31) -> '1 April 2026 to 31 May 2026'
 */
export function periodWords({ kind, label, firstDay, lastDay }: Period): string {
  if (kind === 'dates') return `${britishDate(firstDay)} to ${britishDate(lastDay)}`;
  return `${label} (${monthWords({ firstDay, lastDay })})`;
}

/**
 * The months of a quarter or year.
 *
 * @param nameOf how a month is called, such as `shortMonthName` where there is little room
 * @example monthWords(2026-27-Q1) -> 'April to June 2026'
 * @example monthWords(2026-27, shortMonthName) -> 'Apr 2026 to Mar 2027'
 */
export function monthWords(
  { firstDay, lastDay }: Pick<Period, 'firstDay' | 'lastDay'>,
  nameOf: (month: number) => string = monthName,
): string {
  const [first, last] = [partsOf(firstDay), partsOf(lastDay)];
  const firstYear = first.year === last.year ? '' : ` ${first.year}`;
  return `${nameOf(first.month)}${firstYear} to ${nameOf(last.month)} ${last.year}`;
}
