import { afterEach, beforeEach, expect, it } from 'vitest';
import { sql } from 'kysely';
import { listenToWrites, writeAgain } from '../../src/storage/written.js';
import type { Written } from '../../src/storage/written.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
beforeEach(async () => {
  service = await startApp();
});
afterEach(() => service.close());

it('hears what is written in its transaction only, and writes it again', async () => {
  const { db } = service.record.connection;
  const heard: Written[] = [];
  const site = (id: string) => ({ id, team_id: service.teamId, name: `Marsh ${id}` });
  await expect(
    db.transaction().execute(async (trx) => {
      await listenToWrites(trx, (each) => heard.push(each));
      await trx.insertInto('site').values(site('one')).execute();
      await trx.selectFrom('site').selectAll().execute();
      await sql`savepoint step`.execute(trx);
      await trx.updateTable('site').set({ name: 'Marsh House' }).where('id', '=', 'one').execute();
      await trx.deleteFrom('site').where('id', '=', 'none').execute();
      throw new Error('undone');
    }),
  ).rejects.toThrow('undone');
  await db.insertInto('site').values(site('two')).execute();
  expect(heard.map((each) => each.sql.split(' ')[0])).toEqual(['insert', 'update', 'delete']);
  await db.transaction().execute(async (trx) => {
    for (const each of heard) await writeAgain(trx, each);
  });
  const names = await db.selectFrom('site').select('name').where('id', 'in', ['one', 'two']).execute();
  expect(names.map(({ name }) => name).sort()).toEqual(['Marsh House', 'Marsh two']);
});
