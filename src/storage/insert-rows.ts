import type { CompiledQuery, DialectAdapter, InsertObject } from 'kysely';
import type { Executor } from './connection.js';
import type { Tables } from './tables.js';

/** By database, then by table, columns and number of rows. */
const statements = new WeakMap<DialectAdapter, Map<string, CompiledQuery>>();

/**
 * Stores rows in one statement, whose text is composed once for each table and number of rows; no rows is no statement.
 *
 * @param rows all with the same columns, none of them undefined
 */
export async function insertRows<Table extends keyof Tables>(
  db: Executor,
  table: Table,
  rows: readonly InsertObject<Tables, Table>[],
): Promise<void> {
  const [first] = rows;
  if (first === undefined) return;
  const columns = Object.keys(first);
  const statement = statementFor(db, `${table} ${columns.join()} ${rows.length}`, () =>
    db.insertInto(table).values(rows).compile(),
  );
  const parameters = rows.flatMap((row) => columns.map((column) => row[column as keyof typeof row]));
  await db.executeQuery({ ...statement, parameters });
}

function statementFor(db: Executor, key: string, compose: () => CompiledQuery): CompiledQuery {
  const { adapter } = db.getExecutor();
  const known = statements.get(adapter) ?? new Map<string, CompiledQuery>();
  statements.set(adapter, known);
  const statement = known.get(key) ?? compose();
  known.set(key, statement);
  return statement;
}
