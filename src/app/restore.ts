import { copyFileSync, existsSync, mkdirSync, readFileSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { MIGRATIONS } from '../../migrations/index.js';
import { inspectDatabaseFile } from '../storage/database-file.js';
import { sha256Of } from './backup.js';
import { readConfig } from './config.js';

/**
 * Replaces the record by a backup, after the backup was verified. The service must be stopped.
 *
 * @param backup the file to restore; its checksum file must stand beside it
 * @param databaseFile the record; the former one is kept as `.before-restore`
 * @throws Error when the checksum differs, the file is damaged, or it has a newer schema than this program; the record
 *   is then untouched
 */
export function restore(backup: string, databaseFile: string): void {
  const [recorded] = readFileSync(`${backup}.sha256`, 'utf8').split(' ');
  if (recorded !== sha256Of(backup))
    throw new Error('The checksum differs: the backup was changed or damaged.');
  const state = inspectDatabaseFile(backup);
  if (state.kind === 'unsound') throw new Error(`The backup is not sound: ${state.reason}.`);
  const unknown = state.migrations.filter((name) => !Object.hasOwn(MIGRATIONS, name));
  if (unknown.length > 0) {
    throw new Error(
      `The backup has a newer schema than this program (${unknown.join(', ')}). Update the program first.`,
    );
  }
  mkdirSync(dirname(databaseFile), { recursive: true });
  const incoming = `${databaseFile}.incoming`;
  copyFileSync(backup, incoming);
  // The write-ahead log goes with its file: it may hold the latest writes.
  for (const suffix of ['', '-wal', '-shm']) {
    if (existsSync(databaseFile + suffix))
      renameSync(databaseFile + suffix, `${databaseFile}.before-restore${suffix}`);
  }
  renameSync(incoming, databaseFile);
}

function run(): void {
  const backup = process.argv[2];
  if (backup === undefined) throw new Error('Name the backup: npm run db:restore -- FILE');
  const { databaseFile } = readConfig(process.env);
  restore(backup, databaseFile);
  console.log(
    `Restored ${databaseFile} from ${backup}. The former record is ${databaseFile}.before-restore.`,
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) run();
