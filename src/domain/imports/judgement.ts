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
  /** Says the same of some rows. */
  readonly add: (numbers: readonly number[], said: Omit<JudgedRow, 'number'>) => void;
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
    add: (numbers, said) => {
      counts[said.verdict] += numbers.length;
      if (said.faults.length === 0 && said.passedOver === null) return;
      for (const number of numbers) rows.push({ number, ...said });
    },
    build: () => ({
      rows: [...rows].sort((one, other) => one.number - other.number),
      counts: { ...counts },
    }),
  };
}
