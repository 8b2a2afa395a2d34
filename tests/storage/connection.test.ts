import { sql } from 'kysely';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openConnection } from '../../src/storage/connection.js';

describe('an open record', () => {
  let folder: string;
  let file: string;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'tidemark-connection-'));
    file = join(folder, 'record.sqlite');
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  it('leaves everything in one file when it is closed, whichever of its connections was used', async () => {
    const first = openConnection(file);
    await sql`create table thing (id integer)`.execute(first.db);
    await first.close();
    expect([existsSync(`${file}-wal`), existsSync(`${file}-shm`)]).toEqual([false, false]);
    const second = openConnection(file);
    await sql`select * from thing`.execute(second.reader);
    await second.close();
    expect([existsSync(`${file}-wal`), existsSync(`${file}-shm`)]).toEqual([false, false]);
  });

  it('reads at once what was written, and refuses to write, on the connection that reads', async () => {
    const { db, reader, close } = openConnection(file);
    await sql`create table thing (id integer)`.execute(db);
    for (const id of [1, 2, 3]) {
      await db.transaction().execute((trx) => sql`insert into thing values (${id})`.execute(trx));
      const { rows } = await sql`select max(id) as id from thing`.execute(reader);
      expect(rows).toEqual([{ id }]);
    }
    await expect(sql`insert into thing values (4)`.execute(reader)).rejects.toThrow('readonly');
    await close();
  });

  it('is written with full synchronisation, so that what was acknowledged survives a loss of power', async () => {
    const { db, close } = openConnection(file);
    const { rows } = await sql<{ synchronous: number }>`pragma synchronous`.execute(db);
    expect(rows).toEqual([{ synchronous: 2 }]);
    await close();
  });
});
