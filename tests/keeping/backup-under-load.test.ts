import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import BetterSqlite from 'better-sqlite3';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { runCommandFile } from '../support/command.js';
import { compiledCommand } from '../support/compiled-command.js';
import { persistentWriter } from '../support/persistent-writer.js';
import { makeRecordFile } from '../support/record-file.js';
import { startService } from '../support/service-process.js';
import { expectWholeWrites } from '../support/whole-writes.js';

const BACKUPS = 3;
const WRITERS = 4;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-load-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

it('a backup that is taken while four people write is restored as the record was at one moment, row by row', async () => {
  const record = join(folder, 'record.sqlite');
  const { token, siteId } = await makeRecordFile(record);
  const service = await startService(compiledCommand('main'), { TIDEMARK_DB: record });
  const names = Array.from({ length: WRITERS }, (_, index) => `writer-${index}`);
  const writers = names.map((name) => persistentWriter(name, token, siteId));
  const acknowledged = (): readonly string[] => writers.flatMap((writer) => [...writer.acknowledged.patient]);
  const writing = Promise.all(writers.map((writer) => writer.writeTo(service)));
  while (acknowledged().length < 20) await new Promise((resolve) => setTimeout(resolve, 10));
  const taken: {
    readonly backup: string;
    readonly before: readonly string[];
    readonly writtenMeanwhile: number;
  }[] = [];
  for (let index = 0; index < BACKUPS; index += 1) {
    const backup = join(folder, `backup-${index}.sqlite`);
    const before = acknowledged();
    await run('backup', [backup], record);
    taken.push({ backup, before, writtenMeanwhile: acknowledged().length - before.length });
  }
  await service.end('SIGKILL');
  await writing;

  for (const { backup, before, writtenMeanwhile } of taken) {
    expect(writtenMeanwhile).toBeGreaterThan(0);
    const restored = `${backup}.restored`;
    await run('restore', [backup], restored);
    expect(await run('verify-audit', [], restored)).toContain('is intact');
    expectWholeWrites(restored);
    expectStartOf(record, restored, before);
  }
});

/** Runs a command that must succeed, compiled; gives what it said. */
async function run(command: string, args: readonly string[], record: string): Promise<string> {
  const ended = await runCommandFile(command, args, { TIDEMARK_DB: record });
  expect(ended).toMatchObject({ code: 0, stderr: '' });
  return ended.stdout;
}

/**
 * The writers only add. So of every table the restored record must hold the first rows of the one that went on, each as it
 * is there, and at least those people whom the service had acknowledged before.
 */
function expectStartOf(record: string, restored: string, acknowledged: readonly string[]): void {
  const [whole, start] = [record, restored].map((file) => new BetterSqlite(file, { readonly: true }));
  if (whole === undefined || start === undefined) throw new Error('Two files are compared.');
  const tables = start
    .prepare("select name from sqlite_schema where type = 'table' and name not like 'sqlite_%'")
    .pluck()
    .all() as string[];
  expect(tables).toContain('audit_event');
  // Tables that are kept by their keys have no order of writing.
  const keptByKey = start
    .prepare('select name from pragma_table_list where wr = 1')
    .pluck()
    .all() as string[];
  expect(keptByKey).toContain('walk_test');
  for (const table of keptByKey) {
    const [ofWhole, ofStart] = [whole, start].map((database) =>
      (database.prepare(`select * from ${table}`).all() as Row[]).map((row) => JSON.stringify(row)),
    );
    const among = new Set(ofWhole);
    expect(
      ofStart?.filter((row) => !among.has(row)),
      table,
    ).toEqual([]);
  }
  const rowsOf = (database: BetterSqlite.Database, table: string, limit: number): readonly Row[] =>
    database.prepare(`select rowid, * from ${table} order by rowid limit ?`).all(limit) as Row[];
  for (const table of tables.filter((name) => !keptByKey.includes(name))) {
    const rows = rowsOf(start, table, -1);
    const first = rowsOf(whole, table, rows.length);
    expect(rows.length, table).toBe(first.length);
    rows.forEach((row, index) => expect(row, table).toEqual(asThen(row, first[index])));
  }
  const people = new Set(rowsOf(start, 'patient', -1).map((row) => row['id']));
  expect(acknowledged.filter((id) => !people.has(id))).toEqual([]);
  for (const database of [whole, start]) database.close();
}

type Row = Readonly<Record<string, unknown>>;

/** The answer to a request is kept beside its key a moment after the write. */
function asThen(row: Row, later: Row | undefined): Row | undefined {
  if (row['request_hash'] === undefined || row['status'] !== null) return later;
  const notYet = { status: null, content_type: null, location: null, etag: null, body: null };
  return { ...later, ...notYet };
}
