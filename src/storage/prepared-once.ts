import type { Database, Statement } from 'better-sqlite3';
import type { SqliteDatabase } from 'kysely';

/** Statements kept; lists of ids of every length make more texts than are worth keeping. */
const KEPT = 200;

/**
 * A database that prepares each statement once: preparing costs more than running a short statement does.
 *
 * Only for queries whose rows are read at once, not for streaming: a statement in use cannot be started again.
 */
export function preparedOnce(database: Database): SqliteDatabase {
  const statements = new Map<string, Statement>();
  return {
    close: () => {
      database.close();
    },
    prepare: (sql) => {
      const known = statements.get(sql);
      if (known !== undefined) return known;
      // Starting afresh is rare, and cheaper than to note the use of each statement at every call.
      if (statements.size >= KEPT) statements.clear();
      const statement = database.prepare(sql);
      statements.set(sql, statement);
      return statement;
    },
  };
}
