import { BLANK, cellText, saysNotKnown, saysNothing, value, wrong } from './cell.js';
import type { Cell, Reading } from './cell.js';
import { wordKey } from './words.js';

/** Codes of a closed set with the words by which teams write each; a code is always taken as it stands. */
export type CodeWords = Readonly<Record<string, readonly string[]>>;

/**
 * Reads a code of a closed set.
 *
 * "Not known" is the code `not-known` where the set has it, and nothing where it has not.
 *
 * @example readCode('Gp', { 'general-practice': ['gp'] }) -> 'general-practice'
 */
export function readCode(cell: Cell, codes: CodeWords): Reading<string> {
  const text = cellText(cell);
  const key = wordKey(text);
  for (const [code, words] of Object.entries(codes)) {
    if (text === code || wordKey(code) === key || (key !== '' && words.includes(key))) return value(code);
  }
  if (saysNotKnown(cell) && Object.hasOwn(codes, 'not-known')) return value('not-known');
  // Who did not attend has no value at a test, but "DNA" is an answer where a reason is asked for.
  if (saysNothing(cell) && key !== 'dna') return BLANK;
  return wrong(`"${text.slice(0, 40)}" is none of: ${Object.keys(codes).join(', ')}.`);
}
