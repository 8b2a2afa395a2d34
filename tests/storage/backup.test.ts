import BetterSqlite from 'better-sqlite3';
import { sql } from 'kysely';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openConnection } from '../../src/storage/connection.js';

it('copies the record as it was when asked, whole, while transactions go on', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-backup-'));
  const { db, backUpTo, close } = openConnection(join(folder, 'record.sqlite'));
  const add = (count: number): Promise<unknown> =>
    db.transaction().execute((trx) =>
      sql`
        insert into thing (text)
        with recursive n (i) as (select 1 union all select i + 1 from n where i < ${sql.lit(count)})
        select hex(randomblob(200)) from n
      `.execute(trx),
    );
  await sql`create table thing (id integer primary key, text text)`.execute(db);
  await add(5000);
  // More than a hundred pages, so that copying takes several steps, and a transaction waits for its commit at each.
  const copying = backUpTo(join(folder, 'copy.sqlite'));
  for (let round = 0; round < 60; round += 1) await Promise.all([add(1), add(1), add(1)]);
  await copying;
  const copy = new BetterSqlite(join(folder, 'copy.sqlite'));
  expect(copy.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(copy.prepare('select count(*) from thing').pluck().get()).toBe(5000);
  copy.close();
  const { rows } = await sql<{ count: number }>`select count(*) as count from thing`.execute(db);
  expect(rows[0]?.count).toBe(5180);
  await close();
  rmSync(folder, { recursive: true });
});
