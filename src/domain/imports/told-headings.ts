import { tightKey } from './words.js';

/** Headings of the two columns behind those of a sheet in the file of its rows to mend. */
export const TOLD_HEADINGS = ['Row in the file', 'What to mend'] as const;

/** The headings of a sheet itself, without those of a file of rows to mend. */
export function ownHeadings(headings: readonly string[]): readonly string[] {
  const told = TOLD_HEADINGS.map(tightKey);
  return headings.filter((heading) => !told.includes(tightKey(heading)));
}
