import type { DatabaseConnection } from 'kysely';
import type { Executor } from './connection.js';

/** What a transaction has read, by statement and values. */
interface Memory {
  /** By statement, then by values. */
  readonly read: Map<string, Map<string, Remembered>>;
  /** How often each table was written to. */
  readonly writes: Map<string, number>;
}

interface Remembered {
  readonly rows: readonly unknown[];
  readonly writesBefore: number;
}

const memories = new WeakMap<DatabaseConnection, Memory>();

/**
 * Lets a transaction remember what it reads from here on, so that rules which each look up the same are not each answered by
 * the database. What it writes to a table makes it forget what it read of that table.
 *
 * Not for a transaction whose callers change the rows that they were given.
 */
export async function rememberReads(trx: Executor): Promise<void> {
  await trx.getExecutor().provideConnection(async (connection) => {
    memories.set(connection, { read: new Map(), writes: new Map() });
  });
}

/**
 * Ends what rememberReads began, once its transaction has ended: what a weak map holds of the young is cleared away only with
 * the old, which is dear where a sheet has a thousand transactions.
 */
export function forgetReads(connection: DatabaseConnection): void {
  memories.delete(connection);
}

/** What a statement has read on a connection before, where that still holds; null where it must be asked. */
export function recall(
  connection: DatabaseConnection,
  sql: string,
  parameters: readonly unknown[],
): readonly unknown[] | null {
  const memory = memories.get(connection);
  const known = memory?.read.get(sql)?.get(JSON.stringify(parameters));
  if (memory === undefined || known === undefined) return null;
  return known.writesBefore === writesTo(memory, aboutOf(sql).tables) ? known.rows : null;
}

/** Tells of a statement that was carried out on a connection, with what it read. */
export function remember(
  connection: DatabaseConnection,
  sql: string,
  parameters: readonly unknown[],
  rows: readonly unknown[],
): void {
  const memory = memories.get(connection);
  if (memory === undefined) return;
  const { kind, tables } = aboutOf(sql);
  if (kind === 'reads') {
    const ofStatement = memory.read.get(sql) ?? new Map<string, Remembered>();
    memory.read.set(sql, ofStatement);
    ofStatement.set(JSON.stringify(parameters), { rows, writesBefore: writesTo(memory, tables) });
    return;
  }
  if (kind === 'undoes') memory.read.clear();
  for (const table of tables) memory.writes.set(table, (memory.writes.get(table) ?? 0) + 1);
}

function writesTo({ writes }: Memory, tables: readonly string[]): number {
  let sum = 0;
  for (const table of tables) sum += writes.get(table) ?? 0;
  return sum;
}

/** What a statement does, and the tables that it reads or writes, as the query builder writes their names. */
interface About {
  readonly kind: 'reads' | 'undoes' | 'other';
  readonly tables: readonly string[];
}

const known = new Map<string, About>();
const MOST_KNOWN = 500;

function aboutOf(sql: string): About {
  const before = known.get(sql);
  if (before !== undefined) return before;
  const about: About = {
    kind: /^select\b/i.test(sql) ? 'reads' : /^rollback\b/i.test(sql) ? 'undoes' : 'other',
    tables: [...sql.matchAll(/\b(?:from|join|into|update) "(\w+)"/gi)].map(([, name = '']) => name),
  };
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(sql, about);
  return about;
}
