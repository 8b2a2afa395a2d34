import type { CellFault } from './read-row.js';
import type { PassedOver } from './row-kind.js';

/** What becomes, or would become, of a row. */
export const ROW_VERDICTS = ['new', 'added', 'already', 'unusual', 'refused', 'passed-over'] as const;
export type RowVerdict = (typeof ROW_VERDICTS)[number];

/** A row of which something is to be said. */
export interface JudgedRow {
  readonly number: number;
  readonly verdict: RowVerdict;
  readonly faults: readonly CellFault[];
  /** Null for a row that is not passed over. */
  readonly passedOver: PassedOver | null;
  /** Rows of the same referral that are not taken because of this one; nothing was found wrong in themselves. */
  readonly heldBack: readonly number[];
}

/** What is wrong with a course, at the row where it stands; null where it is of the course as a whole. */
export interface CourseFault extends CellFault {
  readonly row: number | null;
}

/** What is said of a course of one row or of several. */
export interface SaidOfCourse {
  readonly verdict: RowVerdict;
  readonly faults: readonly CourseFault[];
}

/** What was found of the rows of a sheet. */
export interface Judgement {
  /** Rows that are not simply taken, in the order of the sheet: one that is new or in the record already needs no words. */
  readonly rows: readonly JudgedRow[];
  /** All rows, by verdict. */
  readonly counts: Readonly<Record<RowVerdict, number>>;
}

/** Puts verdicts on rows together as they come. */
export interface JudgementBuilder {
  /** Adds a row that belongs to no course. */
  readonly add: (row: JudgedRow) => void;
  /** Adds the rows of a course: each fault is told once, at its row, and the other rows are held back by the first told. */
  readonly addCourse: (numbers: readonly number[], said: SaidOfCourse) => void;
  /** The judgement of what was added so far. */
  readonly build: () => Judgement;
}

/** An empty judgement to be added to. */
export function judgementBuilder(): JudgementBuilder {
  const counts: Record<RowVerdict, number> = {
    new: 0,
    added: 0,
    already: 0,
    unusual: 0,
    refused: 0,
    'passed-over': 0,
  };
  const rows: JudgedRow[] = [];
  return {
    add: (row) => {
      counts[row.verdict] += 1;
      rows.push(row);
    },
    addCourse: (numbers, said) => {
      counts[said.verdict] += numbers.length;
      rows.push(...toldRows(numbers, said));
    },
    build: () => ({
      rows: [...rows].sort((one, other) => one.number - other.number),
      counts: { ...counts },
    }),
  };
}

function toldRows(numbers: readonly number[], { verdict, faults }: SaidOfCourse): readonly JudgedRow[] {
  const [first] = numbers;
  if (first === undefined || faults.length === 0) return [];
  const byRow = new Map<number, CellFault[]>();
  for (const { row, ...fault } of faults)
    byRow.set(row ?? first, [...(byRow.get(row ?? first) ?? []), fault]);
  const heldBack = numbers.filter((number) => !byRow.has(number));
  return [...byRow.entries()]
    .sort(([one], [other]) => one - other)
    .map(([number, ofRow], index) => ({
      ...{ number, verdict, faults: ofRow, passedOver: null },
      heldBack: index === 0 ? heldBack : [],
    }));
}

/**
 * Numbers of rows in words, neighbours put together.
 *
 * @param numbers in ascending order
 * @example rowsInWords([13, 14, 15, 20]) -> '13 to 15, 20'
 */
export function rowsInWords(numbers: readonly number[]): string {
  const runs: [from: number, to: number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : `${from} to ${to}`)).join(', ');
}

/** What is said beside a row that holds others back; null where it holds none. */
export function heldBackWords({ heldBack }: Pick<JudgedRow, 'heldBack'>): string | null {
  if (heldBack.length === 0) return null;
  const [are, rows] = heldBack.length === 1 ? ['is', 'row'] : ['are', 'rows'];
  return `Because of it ${rows} ${rowsInWords(heldBack)} of the same referral ${are} not taken either.`;
}
