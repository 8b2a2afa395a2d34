import { afterEach, beforeEach, expect, it } from 'vitest';
import { sql } from 'kysely';
import { rememberReads } from '../../src/storage/remembered.js';
import type { Executor } from '../../src/storage/connection.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
beforeEach(async () => {
  service = await startApp();
});
afterEach(() => service.close());

const sitesOf = (trx: Executor) =>
  trx
    .selectFrom('team')
    .innerJoin('site', 'site.team_id', 'team.id')
    .select('site.name')
    .where('team.id', '=', service.teamId)
    .orderBy('site.name')
    .execute()
    .then((rows) => rows.map(({ name }) => name));

it('answers from what was read, until a table of it is written to or what was written is undone', async () => {
  const { db } = service.record.connection;
  await db.transaction().execute(async (trx) => {
    await rememberReads(trx);
    expect(await sitesOf(trx)).toEqual(['Dune Hall', 'Saltmarsh Centre']);
    // Past the memory: a statement that does not name the table as the query builder does. It shows what is remembered.
    await sql`update site set name = 'Marsh House' where name = 'Dune Hall'`.execute(trx);
    expect(await sitesOf(trx)).toEqual(['Dune Hall', 'Saltmarsh Centre']);
    await sql`savepoint step`.execute(trx);
    await trx.updateTable('site').set({ name: 'Quay' }).where('name', '=', 'Marsh House').execute();
    expect(await sitesOf(trx)).toEqual(['Quay', 'Saltmarsh Centre']);
    await sql`rollback to savepoint step`.execute(trx);
    expect(await sitesOf(trx)).toEqual(['Marsh House', 'Saltmarsh Centre']);
  });
  await db.transaction().execute(async (trx) => {
    expect(await sitesOf(trx)).toEqual(['Marsh House', 'Saltmarsh Centre']);
  });
});
