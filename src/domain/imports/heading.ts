import { cellText } from './cell.js';
import type { SheetRow } from './cell.js';
import { recognise } from './mapping.js';
import { tightKey } from './words.js';

/** The headings of a sheet, and where its rows begin. */
export interface Heading {
  readonly rowNumber: number;
  readonly names: readonly string[];
}

/** Titles and notes stand above the headings of many sheets; nobody writes more of them (common practice, no source). */
const ROWS_LOOKED_AT = 20;
/** So many cells with text make a row of headings when none of them is known. */
const FEWEST_NAMES = 3;

/**
 * Finds the row of headings: the one with the most that are known.
 *
 * A row above with the name of a group over several columns, such as "Baseline", is put in front of each of them.
 *
 * @returns null where no row looks like headings
 */
export function findHeading(rows: readonly SheetRow[]): Heading | null {
  const first = rows.slice(0, ROWS_LOOKED_AT);
  let best: { readonly heading: Heading; readonly known: number } | null = null;
  first.forEach((row, index) => {
    const names = row.cells.map(cellText);
    const above = first[index - 1];
    const grouped = above === undefined ? names : underGroups(names, above.cells.map(cellText));
    for (const candidate of [names, grouped]) {
      const known = knownIn(candidate);
      if (known > (best?.known ?? 0)) best = { heading: { rowNumber: row.number, names: candidate }, known };
    }
  });
  const found = best as { readonly heading: Heading } | null;
  if (found !== null) return found.heading;
  const texts = first.find(
    (row) =>
      row.cells.filter((cell) => typeof cell === 'string' && cell.trim() !== '').length >= FEWEST_NAMES,
  );
  return texts === undefined ? null : { rowNumber: texts.number, names: texts.cells.map(cellText) };
}

/** Headings that stand in a sheet more than once, each once. */
export function repeatedHeadings(names: readonly string[]): readonly string[] {
  const keys = names.map(tightKey);
  return names.filter((name, index) => {
    const key = keys[index] ?? '';
    return key !== '' && keys.indexOf(key) === index && keys.lastIndexOf(key) !== index;
  });
}

/** How many different columns a row of headings names. */
function knownIn(names: readonly string[]): number {
  return new Set(names.map(recognise).filter((id) => id !== null)).size;
}

/** The group over a column holds for the columns to its right up to the next group. */
function underGroups(names: readonly string[], groups: readonly string[]): readonly string[] {
  let group = '';
  return names.map((name, index) => {
    const over = groups[index] ?? '';
    if (over !== '') group = over;
    if (name === '') return '';
    const whole = `${group} ${name}`;
    return group !== '' && (recognise(whole) !== null || recognise(name) === null) ? whole : name;
  });
}
