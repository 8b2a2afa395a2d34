import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openRecord } from '../../src/app/open-record.js';
import type { OpenRecord } from '../../src/app/open-record.js';
import { SYSTEM_CLOCK } from '../../src/app/system-clock.js';
import type { Clock } from '../../src/usecases/context.js';

/** The bytes of a record with nothing in it; made once in each process. */
let empty: Promise<Buffer> | null = null;

/** Opens a new record in a file that is not there yet. Its schema is copied, which is sooner done than every migration. */
export async function openNewRecord(file: string, clock: Clock): Promise<OpenRecord> {
  empty ??= emptyRecord();
  writeFileSync(file, await empty, { flag: 'wx' });
  return openRecord(file, clock);
}

async function emptyRecord(): Promise<Buffer> {
  const folder = mkdtempSync(join(tmpdir(), 'tidemark-empty-'));
  const file = join(folder, 'record.sqlite');
  await (await openRecord(file, SYSTEM_CLOCK)).connection.close();
  const bytes = readFileSync(file);
  rmSync(folder, { recursive: true });
  return bytes;
}
