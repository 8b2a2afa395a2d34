import type { CompiledQuery, DialectAdapter, InsertObject } from 'kysely';
import type { Executor } from './connection.js';
import { runComposed } from './run-composed.js';
import type { Tables } from './tables.js';

/**
 * A way to store rows of one table whose statement is composed once for each number of rows.
 *
 * For tables that are written all day: composing a statement takes longer than running it.
 *
 * @returns stores rows in one statement, and does nothing where there are none; all rows of all calls have the same
 *   columns, none of them undefined
 * @throws Error when a row has other columns than the first one ever stored
 */
export function rowsInto<Table extends keyof Tables>(
  table: Table,
): (db: Executor, rows: readonly InsertObject<Tables, Table>[]) => Promise<void> {
  const statements = new WeakMap<DialectAdapter, Map<number, CompiledQuery>>();
  let columns: readonly string[] = [];
  return async (db, rows) => {
    const [first] = rows;
    if (first === undefined) return;
    if (columns.length === 0) columns = Object.keys(first);
    const { adapter } = db.getExecutor();
    const composed = statements.get(adapter) ?? new Map<number, CompiledQuery>();
    statements.set(adapter, composed);
    const statement = composed.get(rows.length) ?? db.insertInto(table).values(rows).compile();
    composed.set(rows.length, statement);
    await runComposed(db, { ...statement, parameters: parametersOf(rows, columns) });
  };
}

function parametersOf(
  rows: readonly Readonly<Record<string, unknown>>[],
  columns: readonly string[],
): readonly unknown[] {
  const parameters: unknown[] = [];
  for (const row of rows) {
    if (Object.keys(row).length !== columns.length || !columns.every((column) => column in row)) {
      throw new Error(`Each row must have these columns: ${columns.join(', ')}.`);
    }
    for (const column of columns) parameters.push(row[column]);
  }
  return parameters;
}
