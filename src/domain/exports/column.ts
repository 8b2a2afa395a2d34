import type { ColumnKind, Ownership, RecordColumn, Sensitivity } from './record-table.js';

/** A column that is always filled. */
export function column(
  name: string,
  kind: ColumnKind,
  meaning: string,
  sensitivity: Sensitivity = 'none',
): RecordColumn {
  return { name, kind, isOptional: false, sensitivity, meaning };
}

/** A column that may be empty. */
export function optional(
  name: string,
  kind: ColumnKind,
  meaning: string,
  sensitivity: Sensitivity = 'none',
): RecordColumn {
  return { ...column(name, kind, meaning, sensitivity), isOptional: true };
}

export const ID: ColumnKind = { type: 'id' };
export const TEXT: ColumnKind = { type: 'text' };
export const DATE: ColumnKind = { type: 'date' };
export const INSTANT: ColumnKind = { type: 'instant' };
export const YES_NO: ColumnKind = { type: 'yes-no' };
export const DIGEST: ColumnKind = { type: 'digest' };
export const OBJECT: ColumnKind = { type: 'json', form: 'object' };

/** A whole number within limits. */
export function whole(min: number, max: number, unit = ''): ColumnKind {
  return { type: 'number', min, max, unit };
}

/** The number of a version, from 1. */
export const VERSION: ColumnKind = whole(1, 1_000_000);

/** One of a closed set. */
export function oneOf(codes: readonly string[]): ColumnKind {
  return { type: 'code', codes };
}

/** A row of another table. */
export function rowOf(table: string, byColumn = 'id'): ColumnKind {
  return { type: 'reference', table, column: byColumn };
}

export const OF_TEAM: Ownership = { by: 'team', column: 'team_id' };

/** Owned through the row of another table. */
export function ownedThrough(byColumn: string, table: string, parentColumn = 'id'): Ownership {
  return { by: 'parent', column: byColumn, table, parentColumn };
}

/** The columns of an entry that was made in error: all three filled, or none. */
export const IN_ERROR: readonly RecordColumn[] = [
  optional(
    'entered_in_error_at',
    INSTANT,
    'When it was marked as entered in error; it is counted nowhere since',
  ),
  optional('entered_in_error_by', rowOf('account'), 'Who marked it', 'staff'),
  optional('entered_in_error_reason', TEXT, 'Why', 'free-text'),
];

/** The columns of a former state of a corrected row. */
export const FORMER_STATE: readonly RecordColumn[] = [
  column('version', VERSION, 'The number of the version that was superseded'),
  column('document', OBJECT, 'The whole state as it was, as JSON', 'free-text'),
  column('superseded_at', INSTANT, 'When it was corrected'),
  column('superseded_by', rowOf('account'), 'Who corrected it', 'staff'),
  column('reason', TEXT, 'Why it was corrected', 'free-text'),
];
