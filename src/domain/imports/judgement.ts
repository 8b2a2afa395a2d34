import type { CellFault } from './read-row.js';
import type { PassedOver } from './row-kind.js';

/** What becomes, or would become, of a row. */
export const ROW_VERDICTS = ['new', 'added', 'already', 'unusual', 'refused', 'passed-over'] as const;
export type RowVerdict = (typeof ROW_VERDICTS)[number];

/** A row and its verdict; a row that is new or in the record already needs no words. */
export interface JudgedRow {
  readonly number: number;
  readonly verdict: RowVerdict;
  readonly faults: readonly CellFault[];
  /** Null for a row that is not passed over. */
  readonly passedOver: PassedOver | null;
}

/** Every row of a sheet with its verdict, in the order of the sheet. */
export interface Judgement {
  readonly rows: readonly JudgedRow[];
  readonly counts: Readonly<Record<RowVerdict, number>>;
}

/** Puts the verdicts of rows together. */
export function judgementOf(rows: readonly JudgedRow[]): Judgement {
  const counts: Record<RowVerdict, number> = {
    new: 0,
    added: 0,
    already: 0,
    unusual: 0,
    refused: 0,
    'passed-over': 0,
  };
  for (const { verdict } of rows) counts[verdict] += 1;
  return { rows: [...rows].sort((one, other) => one.number - other.number), counts };
}
