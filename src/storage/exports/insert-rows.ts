import type { StoredRow } from '../../domain/exports/record-table.js';
import type { Executor } from '../connection.js';
import { rowsInto } from '../rows-into.js';
import type { Tables } from '../tables.js';

/** A row that the store does not take, and which of its rules the row breaks. */
export interface RowNotTaken {
  readonly index: number;
  readonly rule: string;
}

/** A way to store rows of one table of the record as they stand; all rows have the same columns. */
export type RowInserter = (db: Executor, rows: readonly StoredRow[]) => Promise<RowNotTaken | null>;

/**
 * Stores rows as they stand, ids and all, by the rules of the store itself.
 *
 * @param table name of a table of the record
 * @returns what stores some rows: the first row that breaks a rule, or null when all are stored
 */
export function recordRowsInto(table: string): RowInserter {
  const insert = rowsInto(table as keyof Tables);
  // The columns are those of the table: the tables of the record are held to the store by a test.
  const store = (db: Executor, rows: readonly StoredRow[]): Promise<void> => insert(db, rows);
  return async (db, rows) => {
    try {
      await store(db, rows);
      return null;
    } catch (error) {
      if (ruleBroken(error) === null) throw error;
    }
    for (const [index, row] of rows.entries()) {
      try {
        await store(db, [row]);
      } catch (error) {
        const rule = ruleBroken(error);
        if (rule === null) throw error;
        return { index, rule };
      }
    }
    return null;
  };
}

/** The rule of the store that a statement broke; null for any other error. */
function ruleBroken(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error)) return null;
  return String(error.code).startsWith('SQLITE_CONSTRAINT') ? error.message : null;
}
