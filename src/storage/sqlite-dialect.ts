import { SqliteDialect } from 'kysely';
import type { Dialect, SqliteDatabase } from 'kysely';

/**
 * SQLite as the query builder knows it, with one thing that it does not count on: SQLite changes schemas within a
 * transaction. So migrations run in one, and a failed migration leaves nothing behind.
 */
export function sqliteDialect(database: SqliteDatabase): Dialect {
  const dialect = new SqliteDialect({ database });
  const adapter = dialect.createAdapter();
  Object.defineProperty(adapter, 'supportsTransactionalDdl', { value: true });
  return {
    createAdapter: () => adapter,
    createDriver: () => dialect.createDriver(),
    createIntrospector: (db) => dialect.createIntrospector(db),
    createQueryCompiler: () => dialect.createQueryCompiler(),
  };
}
