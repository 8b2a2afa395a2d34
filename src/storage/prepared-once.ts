import type { Database, Statement } from 'better-sqlite3';
import type { SqliteDatabase } from 'kysely';

/** Statements kept; lists of ids of every length make more texts than are worth keeping. */
const KEPT = 200;

/**
 * A database that prepares each statement once and keeps the latest used ones: preparing costs more than running a short
 * statement does.
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
      const statement = known ?? database.prepare(sql);
      // A map keeps the order of insertion, so that the first entry is the one used longest ago.
      if (known !== undefined) statements.delete(sql);
      statements.set(sql, statement);
      const oldest = statements.keys().next();
      if (statements.size > KEPT && oldest.done !== true) statements.delete(oldest.value);
      return statement;
    },
  };
}
