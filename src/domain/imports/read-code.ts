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
  // A tick has neither letters nor figures.
  const code = codesByKey(codes).get(key === '' ? text.trim() : key);
  if (code !== undefined) return value(code);
  if (saysNotKnown(cell) && Object.hasOwn(codes, 'not-known')) return value('not-known');
  // Who did not attend has no value at a test, but "DNA" is an answer where a reason is asked for.
  if (saysNothing(cell) && key !== 'dna') return BLANK;
  return wrong(`"${text.slice(0, 40)}" is none of: ${Object.keys(codes).join(', ')}.`);
}

const known = new WeakMap<CodeWords, ReadonlyMap<string, string>>();

/** The codes of a set by everything that they are written as; found once, since a sheet asks for every row. */
function codesByKey(codes: CodeWords): ReadonlyMap<string, string> {
  const found = known.get(codes);
  if (found !== undefined) return found;
  const byKey = new Map<string, string>();
  for (const [code, words] of Object.entries(codes)) {
    for (const key of [wordKey(code), ...words]) if (key !== '' && !byKey.has(key)) byKey.set(key, code);
  }
  known.set(codes, byKey);
  return byKey;
}
