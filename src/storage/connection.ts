import BetterSqlite from 'better-sqlite3';
import { Kysely } from 'kysely';
import { groupCommitDialect } from './group-commit.js';
import { preparedOnce } from './prepared-once.js';
import { sqliteDialect } from './sqlite-dialect.js';
import type { Tables } from './tables.js';

/** A database, or a transaction on it: every query function takes one of these first. */
export type Executor = Kysely<Tables>;

/** An open record: one connection for writing, and a second that only reads, so that a report does not hold up a write. */
export interface Connection {
  readonly db: Kysely<Tables>;
  readonly reader: Kysely<Tables>;
  /** Copies the whole record to a file while work goes on. */
  readonly backUpTo: (file: string) => Promise<void>;
  readonly close: () => Promise<void>;
}

/**
 * Opens the record in a SQLite file; the file is made when it does not exist.
 *
 * Every acknowledged write is on the disk: write-ahead log with full synchronisation.
 *
 * @param file path of the database file
 */
export function openConnection(file: string): Connection {
  const writing = new BetterSqlite(file);
  for (const pragma of [
    'journal_mode = WAL',
    'synchronous = FULL',
    'foreign_keys = ON',
    'busy_timeout = 5000',
    'trusted_schema = OFF',
    // What undoing one transaction of a group takes: in a file of its own it was most of what a write wrote.
    'temp_store = MEMORY',
  ]) {
    writing.pragma(pragma);
  }
  const db = new Kysely<Tables>({ dialect: groupCommitDialect(writing) });
  const reading = openReader(file);
  return {
    db,
    reader: reading.reader,
    backUpTo: (target) => copyDatabaseFile(file, target),
    close: async () => {
      // The last to close brings the log into the record.
      await reading.close();
      await db.destroy();
      writing.close();
    },
  };
}

/** A connection that only reads. */
export interface Reader {
  readonly reader: Kysely<Tables>;
  readonly close: () => Promise<void>;
}

/**
 * Opens a connection that only reads; one for writing must outlive it, which brings the log into the record.
 *
 * @param file path of the database file; it must be there
 */
export function openReader(file: string): Reader {
  const reading = new BetterSqlite(file, { readonly: true });
  for (const pragma of [
    'busy_timeout = 5000',
    'trusted_schema = OFF',
    'query_only = ON',
    // What one report reads of a large store, so that it reads nothing twice. No memory map: it is taken down after every
    // write of the other connection, and to find a page anew in a map costs more than to read it.
    'cache_size = -32768',
  ]) {
    reading.pragma(pragma);
  }
  const reader = new Kysely<Tables>({ dialect: sqliteDialect(preparedOnce(reading)) });
  return {
    reader,
    close: async () => {
      await reader.destroy();
      // The query builder does not close what it has never used.
      reading.close();
    },
  };
}

/**
 * Copies a record as it stands at one moment: on a connection of its own, whatever is written meanwhile.
 *
 * @param file the record; it must be there
 */
export async function copyDatabaseFile(file: string, target: string): Promise<void> {
  // Not opened for reading only: who closes such a record last leaves its log behind.
  const source = new BetterSqlite(file, { fileMustExist: true });
  try {
    source.pragma('query_only = ON');
    source.exec('begin');
    source.prepare('select count(*) from sqlite_schema').get();
    await source.backup(target);
  } finally {
    source.close();
  }
}

/** Reads one row of the schema. @throws the driver's error when the record cannot be read */
export async function pingDatabase(db: Executor): Promise<void> {
  await db.selectFrom('team').select('id').limit(1).execute();
}

/**
 * Writes one row that says nothing but when, and waits until it is on the disk: a full disk shows only so.
 *
 * @throws the driver's error when the record cannot be written
 */
export async function probeWriting(db: Executor, now: string): Promise<void> {
  await db
    .insertInto('write_probe')
    .values({ id: 1, probed_at: now })
    .onConflict((conflict) => conflict.column('id').doUpdateSet({ probed_at: now }))
    .execute();
}
