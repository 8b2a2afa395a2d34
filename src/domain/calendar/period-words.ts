import { britishDate, monthName, shortMonthName } from './british-date.js';
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
  const [first, last] = [partsOf(firstDay), partsOf(lastDay)];
  const firstYear = first.year === last.year ? '' : ` ${first.year}`;
  return `${label} (${monthName(first.month)}${firstYear} to ${monthName(last.month)} ${last.year})`;
}

/** The months of a quarter or year where there is little room. @example shortMonths(2026-27-Q1) -> 'Apr to Jun 2026' */
export function shortMonths({ firstDay, lastDay }: Period): string {
  const [first, last] = [partsOf(firstDay), partsOf(lastDay)];
  const firstYear = first.year === last.year ? '' : ` ${first.year}`;
  return `${shortMonthName(first.month)}${firstYear} to ${shortMonthName(last.month)} ${last.year}`;
}
