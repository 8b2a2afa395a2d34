import { BLANK, cellText, saysNothing, value, wrong } from './cell.js';
import type { Cell, Reading } from './cell.js';

/**
 * Reads an NHS number to its digits; whether they agree with one another is for the rules of a person to say.
 *
 * @example readNhsNumber('999 000 0018') -> '9990000018'; readNhsNumber('9.44E+09') -> wrong
 */
export function readNhsNumber(cell: Cell): Reading<string> {
  if (saysNothing(cell)) return BLANK;
  const text = cellText(cell);
  if (/^\d(?:\.\d+)?e\+?\d+$/i.test(text)) {
    return wrong(
      'The spreadsheet has shortened this number, and its last digits are lost. Set the column to text and type the number again.',
    );
  }
  return value(text.replaceAll(/[\s-]/g, ''));
}
