import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openConnection, pingDatabase } from '../../src/storage/connection.js';

describe('a connection', () => {
  let folder = '';
  let file = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'tidemark-connection-'));
    file = join(folder, 'record.sqlite');
  });
  afterEach(() => {
    rmSync(folder, { recursive: true });
  });

  it('leaves nothing open when it is closed, even a reader that was never used', async () => {
    const connection = openConnection(file);
    await sql`create table team (id text)`.execute(connection.db);
    expect(existsSync(`${file}-wal`)).toBe(true);
    await connection.close();
    // SQLite takes the log away with the last handle.
    expect(existsSync(`${file}-wal`)).toBe(false);
    await expect(pingDatabase(connection.reader)).rejects.toThrow(/not open/);
    await expect(pingDatabase(connection.db)).rejects.toThrow();
  });

  it('writes through one handle and only reads through the other', async () => {
    const connection = openConnection(file);
    await sql`create table team (id text)`.execute(connection.db);
    await pingDatabase(connection.reader);
    await expect(sql`create table site (id text)`.execute(connection.reader)).rejects.toThrow(/readonly/);
    await connection.close();
  });
});
