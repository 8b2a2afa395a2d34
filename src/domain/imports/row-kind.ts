import { cellText } from './cell.js';
import type { SheetRow } from './cell.js';
import { tightKey } from './words.js';

/** Why a row is passed over: nothing in it, the headings again, or a sum of the rows above. */
export type PassedOver = 'blank' | 'headings' | 'total';

/** What the first cell of a row of sums says (common practice, no source). */
const TOTALS = /^(?:grand\s+)?(?:totals?|sum|average|mean|median|count|n)\b\s*[:=]?/i;

/**
 * Why a row holds no record; null where it holds one.
 *
 * @param names the headings of the sheet
 * @param identifying positions of the columns that say who somebody is
 */
export function passedOver(
  row: SheetRow,
  names: readonly string[],
  identifying: readonly number[],
): PassedOver | null {
  const texts = row.cells.map(cellText);
  const written = texts.filter((text) => text !== '');
  if (written.length === 0) return 'blank';
  const isHeading = (text: string, index: number): boolean =>
    text === '' || tightKey(names[index] ?? '').endsWith(tightKey(text));
  if (written.length > 1 && texts.every(isHeading)) return 'headings';
  const namesSomebody = identifying.some((position) => /\d/.test(texts[position] ?? ''));
  return !namesSomebody && TOTALS.test(written[0] ?? '') ? 'total' : null;
}
