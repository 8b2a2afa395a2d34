import BetterSqlite from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { MIGRATIONS } from '../../migrations/index.js';
import { migrate } from '../../src/storage/migrate.js';
import type { Tables } from '../../src/storage/tables.js';

/*
 * When a row is deleted the database looks for rows that refer to it. Without an index it would look through whole tables
 * for each person who is deleted, or taken out again with an import.
 */

const database = new BetterSqlite(':memory:');
const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });

beforeAll(() => migrate(db, MIGRATIONS));
afterAll(() => db.destroy());

/** Whose rows never are deleted. */
const STAY = ['account', 'commissioner', 'site', 'team'];

it('to what can be deleted are found by an index', () => {
  const references = database
    .prepare<[], { child: string; parent: string; fields: string }>(
      `select child.name as child, f."table" as parent, group_concat(f."from" || ' = ?', ' and ') as fields
         from sqlite_master child, pragma_foreign_key_list(child.name) f
        where child.type = 'table'
        group by child.name, f.id`,
    )
    .all()
    .filter(({ parent }) => !STAY.includes(parent));
  expect(references.length).toBeGreaterThan(20);
  const looked = references.map(({ child, fields }) => {
    const steps = database
      .prepare<[string[]], { detail: string }>(`explain query plan select 1 from ${child} where ${fields}`)
      .all(fields.split(' and ').map(() => ''));
    return { of: `${child}: ${fields}`, how: steps.map(({ detail }) => detail.split(' ')[0]) };
  });
  expect(looked.filter(({ how }) => how.some((step) => step !== 'SEARCH'))).toEqual([]);
});
