import BetterSqlite from 'better-sqlite3';
import { Kysely } from 'kysely';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { composedOnce } from '../../src/storage/composed-once.js';
import type { ValueOf } from '../../src/storage/composed-once.js';
import type { Executor } from '../../src/storage/connection.js';
import { sqliteDialect } from '../../src/storage/sqlite-dialect.js';
import type { Tables } from '../../src/storage/tables.js';

describe('a query composed once', () => {
  let compositions: number;
  let raw: BetterSqlite.Database;
  let db: Executor;

  beforeEach(() => {
    compositions = 0;
    [raw, db] = openSites('Dune Hall', 'Saltmarsh Centre');
  });
  afterEach(() => db.destroy());

  const makeSitesNamed = () =>
    composedOnce((on, value: ValueOf<{ teamId: string; name: string }>) => {
      compositions += 1;
      return on
        .selectFrom('site')
        .select('id')
        .where('name', '=', value('name'))
        .where('team_id', '=', value('teamId'))
        .where('id', '>', 0 as never);
    });

  it('is run with the values of each call, whatever their order, beside those that are fixed', async () => {
    const sitesNamed = makeSitesNamed();
    expect(await sitesNamed(db, { teamId: 'team', name: 'Dune Hall' })).toEqual([{ id: 1 }]);
    expect(await sitesNamed(db, { name: 'Saltmarsh Centre', teamId: 'team' })).toEqual([{ id: 2 }]);
    expect(await sitesNamed(db, { teamId: 'other team', name: 'Dune Hall' })).toEqual([]);
    expect(compositions).toBe(1);
  });

  it('sees what its transaction has written', async () => {
    const sitesNamed = makeSitesNamed();
    const seen = await db.transaction().execute(async (trx) => {
      await trx.updateTable('site').set({ name: 'Quay Rooms' }).where('name', '=', 'Dune Hall').execute();
      return sitesNamed(trx, { teamId: 'team', name: 'Quay Rooms' });
    });
    expect(seen).toEqual([{ id: 1 }]);
  });

  it('asks the database that it is given', async () => {
    const sitesNamed = makeSitesNamed();
    const [, otherDb] = openSites('Quay Rooms');
    expect(await sitesNamed(db, { teamId: 'team', name: 'Quay Rooms' })).toEqual([]);
    expect(await sitesNamed(otherDb, { teamId: 'team', name: 'Quay Rooms' })).toEqual([{ id: 1 }]);
    await otherDb.destroy();
    expect(raw.open).toBe(true);
  });
});

function openSites(...names: readonly string[]): [BetterSqlite.Database, Executor] {
  const raw = new BetterSqlite(':memory:');
  raw.exec('create table site (id integer primary key, team_id text, name text)');
  for (const name of names) raw.prepare("insert into site (team_id, name) values ('team', ?)").run(name);
  return [raw, new Kysely<Tables>({ dialect: sqliteDialect(raw) })];
}
