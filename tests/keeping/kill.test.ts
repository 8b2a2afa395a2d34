import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { chance, randomFor, wholeBetween } from '../../seeds/random.js';
import type { Random } from '../../seeds/random.js';
import { verifyAuditTrail } from '../../src/storage/audit/verify-trail.js';
import { openConnection } from '../../src/storage/connection.js';
import { compiledCommand } from '../support/compiled-command.js';
import { persistentWriter } from '../support/persistent-writer.js';
import type { PersistentWriter } from '../support/persistent-writer.js';
import { makeRecordFile } from '../support/record-file.js';
import { killOnTheWayUp, startService } from '../support/service-process.js';
import { expectWholeWrites } from '../support/whole-writes.js';

/** Two records, each with a service of its own, so that both processors are used. */
const RECORDS = 2;
const KILLS_OF_EACH = 25;
const WRITERS = 4;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tidemark-kill-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const served = (): [string, string] => compiledCommand('main');
const start = (file: string) => startService(served(), { TIDEMARK_DB: file });

it('keeps every acknowledged write, and nothing by half, when it is killed at any of 50 moments', async () => {
  const seed = Number(process.env['KILL_SEED'] ?? Date.now() % 1_000_000);
  console.info(`Moments of killing: KILL_SEED=${seed}`);
  const records = Array.from({ length: RECORDS }, (_, index) => index);
  const lost = await Promise.all(
    records.map(async (index) => {
      const file = join(folder, `record-${index}.sqlite`);
      const { token, siteId } = await makeRecordFile(file);
      const names = Array.from({ length: WRITERS }, (_, writer) => `writer-${writer}`);
      const writers = names.map((name) => persistentWriter(name, token, siteId));
      const random = randomFor(seed, `kill/${index}`);
      for (let kill = 1; kill <= KILLS_OF_EACH; kill += 1) {
        await killOnce(file, writers, random);
        await expectKept(file, writers, 'at least');
      }
      const service = await start(file);
      await Promise.all(writers.map((writer) => writer.finishOn(service)));
      expect(await service.end('SIGTERM')).toEqual({ code: 0, signal: null });
      await expectKept(file, writers, 'exactly');
      expectWholeWrites(file);
      return writers.reduce((sum, writer) => sum + writer.lostAnswers(), 0);
    }),
  );
  console.info(`Answers lost after the write: ${lost.join(' and ')}`);
}, 240_000);

/** One in six is killed on its way up, the others among their writes. */
async function killOnce(file: string, writers: readonly PersistentWriter[], random: Random): Promise<void> {
  if (chance(random, 1 / 6)) {
    const afterMs = wholeBetween(random, 50, 400);
    const ending = await killOnTheWayUp(served(), { TIDEMARK_DB: file }, afterMs);
    expect(ending.signal).toBe('SIGKILL');
    return;
  }
  const service = await start(file);
  const writing = Promise.all(writers.map((writer) => writer.writeTo(service)));
  await pause(wholeBetween(random, 1, 150));
  expect(await service.end('SIGKILL')).toEqual({ code: null, signal: 'SIGKILL' });
  await writing;
}

/** Every id that was acknowledged is in the record; in the end there is nothing beside them. */
async function expectKept(
  file: string,
  writers: readonly PersistentWriter[],
  how: 'at least' | 'exactly',
): Promise<void> {
  const { db, close } = openConnection(file);
  for (const table of ['patient', 'referral', 'assessment'] as const) {
    const rows = await db.selectFrom(table).select('id').execute();
    const kept = new Set(rows.map(({ id }) => id));
    const acknowledged = writers.flatMap((writer) => [...writer.acknowledged[table]]);
    expect(acknowledged.filter((id) => !kept.has(id))).toEqual([]);
    if (how === 'exactly') expect([...kept].sort()).toEqual([...acknowledged].sort());
    // In flight was at most one write of each writer.
    expect(kept.size).toBeLessThanOrEqual(acknowledged.length + WRITERS);
  }
  expect(await verifyAuditTrail(db)).toMatchObject({ kind: 'intact' });
  await close();
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
