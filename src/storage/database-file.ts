import BetterSqlite from 'better-sqlite3';

/** What a look into a database file found. */
export type FileState =
  | { readonly kind: 'sound'; readonly migrations: readonly string[] }
  | { readonly kind: 'unsound'; readonly reason: string };

/**
 * Checks that a file is an undamaged record: every page is read, every reference must hold.
 *
 * @returns the names of the migrations it has had, or what is wrong with it
 */
export function inspectDatabaseFile(file: string): FileState {
  return look(file, (database): FileState => {
    const reason = damageIn(database, 'integrity_check');
    if (reason !== null) return { kind: 'unsound', reason };
    const rows = database.prepare('select name from kysely_migration order by name').all() as {
      name: string;
    }[];
    return { kind: 'sound', migrations: rows.map((row) => row.name) };
  });
}

/**
 * What is wrong with a database file, by the quick check: every page and reference is read, indexes are not compared with
 * their tables.
 *
 * @returns null where nothing is wrong
 */
export function damageOf(file: string): string | null {
  const state = look(file, (database) => damageIn(database, 'quick_check'));
  return state === null || typeof state === 'string' ? state : state.reason;
}

function look<Seen>(
  file: string,
  see: (database: BetterSqlite.Database) => Seen,
): Seen | { readonly kind: 'unsound'; readonly reason: string } {
  let database: BetterSqlite.Database | null = null;
  try {
    database = new BetterSqlite(file, { readonly: true, fileMustExist: true });
    return see(database);
  } catch (error) {
    return { kind: 'unsound', reason: error instanceof Error ? error.message : 'it cannot be read' };
  } finally {
    database?.close();
  }
}

function damageIn(database: BetterSqlite.Database, check: 'integrity_check' | 'quick_check'): string | null {
  const verdict = database.pragma(check, { simple: true });
  if (verdict !== 'ok') return 'the integrity check failed';
  const broken = database.prepare('select count(*) as count from pragma_foreign_key_check').get() as {
    count: number;
  };
  return broken.count > 0 ? `${broken.count} references lead nowhere` : null;
}

/**
 * Brings a record into one file: what its write-ahead log holds goes into it, and the log goes away.
 *
 * @returns `in-use` where somebody else has it open, which changes nothing; `unreadable` where it is no database: a log
 *   beside it may then be gone
 */
export function settleDatabaseFile(file: string): 'settled' | 'in-use' | 'unreadable' {
  try {
    const database = new BetterSqlite(file, { fileMustExist: true, timeout: 100 });
    try {
      return database.pragma('journal_mode = DELETE', { simple: true }) === 'delete' ? 'settled' : 'in-use';
    } finally {
      database.close();
    }
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'SQLITE_BUSY'
      ? 'in-use'
      : 'unreadable';
  }
}
