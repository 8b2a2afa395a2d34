import type { SheetRow } from './cell.js';
import type { Mapping } from './mapping.js';
import { isScaleNotNamed, mappedColumn } from './mapping.js';
import { orderOf } from './read-date.js';

/** Something that a person must say before a sheet can be read: nothing is guessed. */
export interface Question {
  readonly kind: 'date-order' | 'dyspnoea-scale' | 'site' | 'column-missing' | 'mixed-dates';
  /** Heading of the column that it is about; null for the sheet as a whole. */
  readonly heading: string | null;
  readonly message: string;
}

/** Columns without which no referral can be read from a wide sheet, each a set of ways to give it. */
const NEEDED_WIDE: readonly (readonly string[])[] = [
  ['person.nhsNumber', 'person.nhsNumberMissingReason'],
  ['person.familyName', 'person.wholeName'],
  ['person.bornOn'],
  ['referral.receivedOn'],
  ['referral.diagnosis'],
];
const NEEDED_LONG: readonly (readonly string[])[] = [
  ['person.nhsNumber'],
  ['referral.receivedOn'],
  ['long.measure'],
  ['long.value'],
  ['long.timepoint'],
  ['long.assessedOn'],
];

/** Everything that must be said before a sheet can be read as it is mapped; empty when it can. */
export function questionsOf(mapping: Mapping, rows: readonly SheetRow[]): readonly Question[] {
  return [
    ...missingColumns(mapping),
    ...scaleQuestions(mapping),
    ...siteQuestion(mapping),
    ...dateQuestions(mapping, rows),
  ];
}

function missingColumns(mapping: Mapping): readonly Question[] {
  const needed = mapping.shape === 'wide' ? NEEDED_WIDE : NEEDED_LONG;
  return needed
    .filter((ways) => ways.every((id) => mappedColumn(mapping, id) === undefined))
    .map((ways) => ({
      kind: 'column-missing',
      heading: null,
      message: `No column is taken for ${ways.join(' or ')}. Choose the column that holds it.`,
    }));
}

function scaleQuestions({ columns }: Mapping): readonly Question[] {
  return columns
    .filter(({ column, heading }) => column === null && isScaleNotNamed(heading))
    .map(({ heading }) => ({
      kind: 'dyspnoea-scale',
      heading,
      message: `Is "${heading}" the MRC dyspnoea scale (grades 1 to 5) or the mMRC (0 to 4)? Choose the column, or leave it out.`,
    }));
}

function siteQuestion(mapping: Mapping): readonly Question[] {
  if (
    mapping.shape === 'long' ||
    mapping.siteId !== null ||
    mappedColumn(mapping, 'referral.site') !== undefined
  )
    return [];
  return [
    { kind: 'site', heading: null, message: 'No column names the site. Choose the site of these referrals.' },
  ];
}

function dateQuestions({ columns, dateOrder }: Mapping, rows: readonly SheetRow[]): readonly Question[] {
  return columns.flatMap(({ column, heading, position }): readonly Question[] => {
    if (column?.kind.type !== 'date') return [];
    const order = orderOf(rows.map((row) => row.cells[position] ?? null));
    if (order === 'mixed') {
      const message = `"${heading}" has dates with the day first and dates with the month first. Mend the column: it cannot be read safely.`;
      return [{ kind: 'mixed-dates', heading, message }];
    }
    if (order !== 'either' || dateOrder !== null) return [];
    const message = `Every date in "${heading}" could be read in two ways. Say whether the day or the month comes first.`;
    return [{ kind: 'date-order', heading, message }];
  });
}
