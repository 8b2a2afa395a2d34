/**
 * How late something is, in words.
 *
 * @param daysLate days since the due day; 0 today, negative for days still left
 * @example lateWords(9) -> '9 days late'; lateWords(-1) -> 'tomorrow'
 */
export function lateWords(daysLate: number): string {
  if (daysLate === 0) return 'today';
  if (daysLate === 1) return '1 day late';
  if (daysLate > 1) return `${daysLate} days late`;
  return daysLate === -1 ? 'tomorrow' : `in ${-daysLate} days`;
}
