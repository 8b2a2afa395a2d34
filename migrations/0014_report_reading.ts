import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/** Tests of an assessment, those referred to before those that refer. */
const TESTS = ['questionnaire', 'score', 'walk_test', 'sit_to_stand', 'physical_test'] as const;

/**
 * A report of a large store reads fewer pages of it. Contacts come from indexes alone: those of one person lie on as many
 * pages as there were classes, and the pages hold other people. The tests of an assessment are kept in the order of their
 * keys, so that to find them is to have them.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await indexContacts(db);
  await keepTestsByKey(db);
}

async function indexContacts(db: Kysely<unknown>): Promise<void> {
  await replaceIndex(db, 'attendance_by_referral', 'attendance', [
    'referral_id',
    'superseded_at',
    'session_id',
    'outcome',
  ]);
  await replaceIndex(db, 'session_by_date', 'session', ['team_id', 'held_on', 'id', 'is_supervised']);
  await db.schema
    .createIndex('attendance_by_session')
    .on('attendance')
    .columns(['session_id', 'superseded_at', 'outcome', 'referral_id'])
    .execute();
  await db.schema
    .createIndex('session_of_contact')
    .on('session')
    .columns(['id', 'entered_in_error_at', 'held_on', 'mode', 'is_supervised'])
    .execute();
}

async function replaceIndex(
  db: Kysely<unknown>,
  name: string,
  table: string,
  columns: readonly string[],
): Promise<void> {
  await db.schema.dropIndex(name).execute();
  await db.schema
    .createIndex(name)
    .on(table)
    .columns([...columns])
    .execute();
}

/** Each table is made anew with the columns, checks and references that it has. */
async function keepTestsByKey(db: Kysely<unknown>): Promise<void> {
  for (const table of TESTS) {
    const anew = (await textOf(db, table))
      .replace(`"${table}"`, `"${table}_by_key"`)
      .replace('references "questionnaire"', 'references "questionnaire_by_key"');
    await sql.raw(`${anew}, without rowid`).execute(db);
    await sql`insert into ${sql.table(`${table}_by_key`)} select * from ${sql.table(table)}`.execute(db);
  }
  // A table goes before the one that it refers to; a reference follows the table that is renamed.
  for (const table of [...TESTS].reverse()) await db.schema.dropTable(table).execute();
  for (const table of TESTS) await db.schema.alterTable(`${table}_by_key`).renameTo(table).execute();
}

async function textOf(db: Kysely<unknown>, table: string): Promise<string> {
  const { rows } = await sql<{ sql: string }>`
    select sql from sqlite_schema where type = 'table' and name = ${table}
  `.execute(db);
  const [found] = rows;
  if (found === undefined) throw new Error(`The record has no table ${table}.`);
  return found.sql;
}
