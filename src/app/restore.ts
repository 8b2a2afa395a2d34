import {
  closeSync,
  constants,
  copyFileSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { MIGRATIONS } from '../../migrations/index.js';
import { inspectDatabaseFile, settleDatabaseFile } from '../storage/database-file.js';
import { readConfig } from './config.js';
import { commandRefused, runCommand } from './run-command.js';
import { sha256OfFile } from './sha256-of-file.js';

const USAGE = `Verifies a backup and puts it in the place of the record. Stop the service first.

  npm run db:restore -- FILE

  FILE    the backup; its checksum FILE.sha256 must stand beside it`;

/** What SQLite keeps beside a record that is in use, or that nobody closed: its log, and an index of the log. */
const COMPANIONS = ['-wal', '-shm'] as const;
/** The index is made again from the log. */
const KEPT_PARTS = ['', '-wal'] as const;

/**
 * Replaces the record by a backup, after the backup was verified. The service must be stopped.
 *
 * The former record is copied before anything is replaced: at every moment there is one record or the other.
 *
 * @param backup the file to restore; its checksum file must stand beside it
 * @param databaseFile the record
 * @returns where the former record is kept, `.before-restore` or the first such name that is free; null where there was none
 * @throws the refusal of a command when the checksum is missing or differs, the file is damaged, it has a newer schema
 *   than this program, or the record is in use; the record is then untouched
 */
export function restore(backup: string, databaseFile: string): string | null {
  verify(backup);
  mkdirSync(dirname(databaseFile), { recursive: true });
  const incoming = `${databaseFile}.incoming`;
  copyFileSync(backup, incoming);
  flush(incoming);
  const kept = existsSync(databaseFile) ? keepFormer(databaseFile) : null;
  // A log that is left of the former record would be played back into the new one.
  for (const companion of COMPANIONS) rmSync(databaseFile + companion, { force: true });
  renameSync(incoming, databaseFile);
  flush(dirname(databaseFile));
  return kept;
}

function verify(backup: string): void {
  if (!existsSync(backup)) throw commandRefused(`There is no backup at ${backup}.`);
  if (!existsSync(`${backup}.sha256`)) {
    throw commandRefused(
      `There is no checksum ${backup}.sha256: nobody can say whether the backup is whole.`,
    );
  }
  const [recorded] = readFileSync(`${backup}.sha256`, 'utf8').split(/\s/);
  if (recorded !== sha256OfFile(backup))
    throw commandRefused('The checksum differs: the backup was changed or damaged.');
  const state = inspectDatabaseFile(backup);
  if (state.kind === 'unsound') throw commandRefused(`The backup is not sound: ${state.reason}.`);
  const unknown = state.migrations.filter((name) => !Object.hasOwn(MIGRATIONS, name));
  if (unknown.length === 0) return;
  throw commandRefused(
    `The backup has a newer schema than this program (${unknown.join(', ')}). Update the program first.`,
  );
}

/** Copies the record with its log, so that even one that cannot be read is kept as it was; gives the name of the copy. */
function keepFormer(databaseFile: string): string {
  const kept = freeName(`${databaseFile}.before-restore`);
  for (const part of KEPT_PARTS) {
    if (existsSync(databaseFile + part))
      copyFileSync(databaseFile + part, kept + part, constants.COPYFILE_EXCL);
  }
  // Asked after copying, because SQLite takes away a log that it cannot make sense of.
  const state = settleDatabaseFile(databaseFile);
  if (state === 'in-use') {
    for (const name of [`${databaseFile}.incoming`, ...KEPT_PARTS.map((part) => kept + part)]) {
      rmSync(name, { force: true });
    }
    throw commandRefused(`${databaseFile} is in use: stop the service first.`);
  }
  if (state === 'settled') settleDatabaseFile(kept);
  for (const part of KEPT_PARTS) if (existsSync(kept + part)) flush(kept + part);
  return kept;
}

function freeName(name: string): string {
  for (let number = 1; ; number += 1) {
    const candidate = number === 1 ? name : `${name}-${number}`;
    if (['', ...COMPANIONS].every((companion) => !existsSync(candidate + companion))) return candidate;
  }
}

/** Waits until a file, or the names in a folder, are on the disk. */
function flush(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function run(): void | null {
  const [backup, ...others] = parseArgs({ allowPositionals: true }).positionals;
  if (backup === undefined || others.length > 0) return null;
  const { databaseFile } = readConfig(process.env);
  const kept = restore(backup, databaseFile);
  console.log(`Restored ${databaseFile} from ${backup}.`);
  console.log(kept === null ? 'There was no record before.' : `The former record is ${kept}.`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await runCommand(USAGE, run);
