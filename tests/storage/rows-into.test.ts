import BetterSqlite from 'better-sqlite3';
import { Kysely } from 'kysely';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Executor } from '../../src/storage/connection.js';
import { rowsInto } from '../../src/storage/rows-into.js';
import { sqliteDialect } from '../../src/storage/sqlite-dialect.js';
import type { Tables } from '../../src/storage/tables.js';

describe('rows stored by a statement composed once', () => {
  let raw: BetterSqlite.Database;
  let db: Executor;

  beforeEach(() => {
    [raw, db] = openSites();
  });
  afterEach(() => db.destroy());

  const stored = (of: BetterSqlite.Database): unknown[] => of.prepare('select * from site order by id').all();
  const site = (id: string): { id: string; team_id: string; name: string } => ({
    id,
    team_id: `team of ${id}`,
    name: `name of ${id}`,
  });

  it('stores one row, several, and other numbers of rows again', async () => {
    const intoSite = rowsInto('site');
    await intoSite(db, [site('a')]);
    await intoSite(db, [site('b'), site('c')]);
    await intoSite(db, [site('d')]);
    await intoSite(db, [site('e'), site('f')]);
    expect(stored(raw)).toEqual(['a', 'b', 'c', 'd', 'e', 'f'].map(site));
  });

  it('does nothing where there are no rows', async () => {
    await rowsInto('site')(db, []);
    expect(stored(raw)).toEqual([]);
  });

  it('puts each value in its column, in whatever order a row names them', async () => {
    const intoSite = rowsInto('site');
    const { id, team_id, name } = site('b');
    await intoSite(db, [site('a'), { name, id, team_id }]);
    expect(stored(raw)).toEqual([site('a'), site('b')]);
  });

  it('refuses a row with other columns, and stores nothing of the call', async () => {
    const intoSite = rowsInto('site');
    await intoSite(db, [site('a')]);
    const more = { ...site('b'), colour: 'blue' };
    await expect(intoSite(db, [site('c'), more])).rejects.toThrow('these columns: id, team_id, name');
    const { colour, id, name } = more;
    const other = { colour, id, name } as unknown as typeof more;
    await expect(intoSite(db, [other])).rejects.toThrow('these columns');
    expect(stored(raw)).toEqual([site('a')]);
  });

  it('belongs to its transaction, and to each database that it is used with', async () => {
    const intoSite = rowsInto('site');
    const [otherRaw, otherDb] = openSites();
    await intoSite(otherDb, [site('x')]);
    const failing = db.transaction().execute(async (trx) => {
      await intoSite(trx, [site('a')]);
      throw new Error('changed my mind');
    });
    await expect(failing).rejects.toThrow('changed my mind');
    expect([stored(raw), stored(otherRaw)]).toEqual([[], [site('x')]]);
    await otherDb.destroy();
  });
});

function openSites(): [BetterSqlite.Database, Executor] {
  const raw = new BetterSqlite(':memory:');
  raw.exec('create table site (id text, team_id text, name text)');
  return [raw, new Kysely<Tables>({ dialect: sqliteDialect(raw) })];
}
