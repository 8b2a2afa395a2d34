import { sql } from 'kysely';
import type { Kysely } from 'kysely';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { MIGRATIONS } from '../../migrations/index.js';
import { openRecord } from '../../src/app/open-record.js';
import { clockAt } from '../../src/app/system-clock.js';
import { openConnection } from '../../src/storage/connection.js';
import type { Executor } from '../../src/storage/connection.js';
import { inspectDatabaseFile } from '../../src/storage/database-file.js';
import { migrate } from '../../src/storage/migrate.js';
import { insertValidRows, VALID_ROWS } from '../support/rows.js';
import { tableTexts } from '../support/schema.js';
import { TEST_INSTANT } from '../support/start-app.js';

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-test-'));
  file = join(folder, 'deep', 'record.sqlite');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const TESTS_BY_KEY = ['questionnaire', 'score', 'walk_test', 'sit_to_stand', 'physical_test'] as const;

const open = () => openRecord(file, clockAt(TEST_INSTANT));

it('brings a file that is not there yet to the newest schema, every migration in its order', async () => {
  const { applied, connection } = await open();
  expect(applied).toEqual(Object.keys(MIGRATIONS));
  await connection.close();
  expect(inspectDatabaseFile(file)).toEqual({ kind: 'sound', migrations: Object.keys(MIGRATIONS) });
});

it('orders the migrations by their names', () => {
  expect(Object.keys(MIGRATIONS)).toEqual(Object.keys(MIGRATIONS).sort());
});

it('applies nothing to a file that is up to date, and leaves what it holds', async () => {
  const first = await open();
  await insertValidRows(first.connection.db);
  await first.connection.close();
  const again = await open();
  expect(again.applied).toEqual([]);
  expect(await again.connection.db.selectFrom('patient').select('id').execute()).toEqual([{ id: 'patient' }]);
  await again.connection.close();
});

it('brings a file of an older schema on, and leaves what it holds', async () => {
  const [oldest] = Object.entries(MIGRATIONS);
  if (oldest === undefined) throw new Error('There is no migration.');
  await open().then(({ connection }) => connection.close());
  rmSync(file);
  const connection = openConnection(file);
  await migrate(connection.db, Object.fromEntries([oldest]));
  const { team } = VALID_ROWS;
  await connection.db
    .insertInto('team')
    .values(team as never)
    .execute();
  await connection.close();
  const { applied, connection: reopened } = await open();
  expect(applied).toEqual(Object.keys(MIGRATIONS).slice(1));
  expect(await reopened.db.selectFrom('team').select('id').execute()).toEqual([{ id: 'team' }]);
  await reopened.close();
});

it('keeps every row, check and reference of the tests of an assessment when it stores them by their keys', async () => {
  const before = Object.entries(MIGRATIONS).filter(([name]) => name < '0014');
  const connection = openConnection(join(folder, 'by-key.sqlite'));
  await migrate(connection.db, Object.fromEntries(before));
  const textsBefore = await tableTexts(connection.db);
  await insertValidRows(connection.db, [...textsBefore.keys()]);
  const rowsBefore = await rowsOf(connection.db);
  await migrate(connection.db, MIGRATIONS);
  expect(await rowsOf(connection.db)).toEqual(rowsBefore);
  const texts = await tableTexts(connection.db);
  for (const table of TESTS_BY_KEY) expect(texts.get(table)).toBe(`${textsBefore.get(table)}, without rowid`);
  const broken = await sql`pragma foreign_key_check`.execute(connection.db);
  expect(broken.rows).toEqual([]);
  await connection.close();
});

it('leaves nothing behind of a migration that fails, and names it', async () => {
  const { connection } = await open();
  const broken = {
    up: async (db: Kysely<unknown>) => {
      await db.schema.createTable('half_done').addColumn('id', 'text').execute();
      await sql`insert into nowhere values (1)`.execute(db);
    },
  };
  const attempt = migrate(connection.db, { ...MIGRATIONS, '9999_broken': broken });
  await expect(attempt).rejects.toThrow('Migration 9999_broken failed: no such table: nowhere');
  expect([...(await tableTexts(connection.db)).keys()]).not.toContain('half_done');
  await connection.close();
});

it('makes every table of the record strict, and has a valid row of each in the tests', async () => {
  const { connection } = await open();
  const tables = await sql<{ name: string; strict: number }>`pragma table_list`.execute(connection.db);
  const ours = tables.rows.filter((row) => !/^(kysely|sqlite)_/.test(row.name));
  expect(ours.filter((row) => row.strict !== 1)).toEqual([]);
  expect(ours.map((row) => row.name).sort()).toEqual(Object.keys(VALID_ROWS).sort());
  await connection.close();
});

it('writes ahead with full synchronisation, and holds every reference', async () => {
  const { connection } = await open();
  expect(await pragma(connection.db, 'journal_mode')).toBe('wal');
  expect(await pragma(connection.db, 'synchronous')).toBe(2);
  expect(await pragma(connection.db, 'foreign_keys')).toBe(1);
  await connection.close();
});

it('reads on a connection that cannot write', async () => {
  const { connection } = await open();
  expect(await pragma(connection.reader, 'query_only')).toBe(1);
  const write = connection.reader.insertInto('commissioner').values({ id: 'x', name: 'x' }).execute();
  await expect(write).rejects.toThrow(/readonly/);
  await connection.close();
});

it('reads what has been written without waiting for the file to be closed', async () => {
  const { connection } = await open();
  await connection.db.insertInto('commissioner').values({ id: 'x', name: 'Payer' }).execute();
  expect(await connection.reader.selectFrom('commissioner').select('name').execute()).toEqual([
    { name: 'Payer' },
  ]);
  await connection.close();
});

async function rowsOf(db: Executor): Promise<Readonly<Record<string, readonly unknown[]>>> {
  const rows: Record<string, readonly unknown[]> = {};
  for (const table of TESTS_BY_KEY) {
    rows[table] = await db.selectFrom(table).selectAll().execute();
    expect(rows[table]).toHaveLength(1);
  }
  return rows;
}

async function pragma(db: Executor, name: string): Promise<unknown> {
  const found = await sql<Record<string, unknown>>`pragma ${sql.raw(name)}`.execute(db);
  return found.rows[0]?.[name];
}
