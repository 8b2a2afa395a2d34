import type { DateOrder } from './read-date.js';
import { COLUMNS, findColumn } from './columns.js';
import type { Column } from './column.js';
import { tightKey } from './words.js';

/** What a person has said about the columns of a sheet, by their headings; kept for the next file of the same kind. */
export interface MappingChoices {
  /** Column id by heading; null for a column that is not to be read. Headings that are not named are recognised. */
  readonly columns: Readonly<Record<string, string | null>>;
  /** Headings whose distances are in feet. */
  readonly inFeet: readonly string[];
  /** Which comes first in dates in figures where the dates of a column do not show it. */
  readonly dateOrder: DateOrder | null;
  /** Site of rows that name none. */
  readonly siteId: string | null;
}

export const NO_CHOICES: MappingChoices = { columns: {}, inFeet: [], dateOrder: null, siteId: null };

/** One column of a sheet and what it is taken for. */
export interface MappedColumn {
  /** From 0. */
  readonly position: number;
  readonly heading: string;
  /** Null for a column that is not read. */
  readonly column: Column | null;
  readonly isInFeet: boolean;
}

/** Whether each row is a referral with all that belongs to it, or one measurement. */
export type SheetShape = 'wide' | 'long';

/** The columns of a sheet as they will be read. */
export interface Mapping {
  readonly shape: SheetShape;
  readonly columns: readonly MappedColumn[];
  readonly dateOrder: DateOrder | null;
  readonly siteId: string | null;
}

const byHeading = new Map<string, string>();
for (const column of COLUMNS) {
  for (const heading of [...column.headings, tightKey(column.label), tightKey(column.id)]) {
    if (!byHeading.has(heading)) byHeading.set(heading, column.id);
  }
}

/** The scale of "MRC" in a heading is asked for: some write it for the grades 1 to 5 and some for 0 to 4. */
const SCALE_NOT_NAMED = /^(?!.*mmrc).*\bmrc\b/i;

/**
 * What a heading is taken for.
 *
 * @returns the id of a column; null where the heading is not known, or could mean two things
 * @example recognise('Baseline 6MWT (m)') -> 'baseline.walk.six-minute-walk.1'; recognise('MRC') -> null
 */
export function recognise(heading: string): string | null {
  if (findColumn(heading) !== undefined) return heading;
  if (isScaleNotNamed(heading)) return null;
  const whole = byHeading.get(tightKey(heading));
  if (whole !== undefined) return whole;
  return byHeading.get(tightKey(heading.replaceAll(/\([^)]*\)/g, ' '))) ?? null;
}

/** Whether a heading names the breathlessness grade without saying on which of the two scales. */
export function isScaleNotNamed(heading: string): boolean {
  return SCALE_NOT_NAMED.test(heading) && !/grade|dyspnoea scale|1\s?-\s?5|1 to 5/i.test(heading);
}

/**
 * Maps the columns of a sheet: as a person has said, else as recognised.
 *
 * @param headings in the order of the sheet; an empty one is a column that is not read
 */
export function mapColumns(headings: readonly string[], choices: MappingChoices): Mapping {
  const columns = headings.map((heading, position): MappedColumn => {
    const id = Object.hasOwn(choices.columns, heading) ? choices.columns[heading] : recognise(heading);
    const column = id === null || id === undefined ? null : (findColumn(id) ?? null);
    return { position, heading, column, isInFeet: choices.inFeet.includes(heading) };
  });
  const isLong = columns.some(({ column }) => column?.id === 'long.measure');
  const { dateOrder, siteId } = choices;
  if (isLong) return { shape: 'long', columns, dateOrder, siteId };
  // A date of a measurement says nothing in a row of a whole course.
  const wide = columns.map((each) =>
    each.column?.id.startsWith('long.') === true ? { ...each, column: null } : each,
  );
  return { shape: 'wide', columns: wide, dateOrder, siteId };
}

/** The mapped column with an id; undefined where the sheet has none. */
export function mappedColumn(mapping: Mapping, id: string): MappedColumn | undefined {
  return mapping.columns.find(({ column }) => column?.id === id);
}
