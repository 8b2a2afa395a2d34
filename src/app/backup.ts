import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { copyDatabaseFile } from '../storage/connection.js';
import { inspectDatabaseFile, settleDatabaseFile } from '../storage/database-file.js';
import { readConfig } from './config.js';
import { commandRefused, requireRecord, runCommand } from './run-command.js';
import { sha256OfFile } from './sha256-of-file.js';
import { SYSTEM_CLOCK } from './system-clock.js';

const USAGE = `Copies the record while work goes on, checks the copy, and writes its checksum beside it.

  npm run db:backup -- [FILE] [--keep N]

  FILE        the copy, which must not be there yet; by default backups/tidemark-TIME.sqlite beside the record
  --keep N    removes the oldest backups of that folder named tidemark-*.sqlite until N are left (from 1)`;

/**
 * Copies the record while work goes on, checks the copy, and writes its checksum beside it.
 *
 * @param databaseFile the record
 * @param target file of the copy; it appears only when it is whole, and never in the place of another file
 * @returns SHA-256 of the copy in hexadecimal
 * @throws the refusal of a command when there is no record, the target is taken, or the copy is not sound
 */
export async function backUp(databaseFile: string, target: string): Promise<string> {
  requireRecord(databaseFile);
  if (existsSync(target)) throw commandRefused(`${target} is there already. Name a new file.`);
  mkdirSync(dirname(target), { recursive: true });
  const unfinished = `${target}.unfinished`;
  rmSync(unfinished, { force: true });
  try {
    await copyDatabaseFile(databaseFile, unfinished);
    // One file that needs nothing beside it, and opens where nothing can be written.
    settleDatabaseFile(unfinished);
    const state = inspectDatabaseFile(unfinished);
    if (state.kind === 'unsound') throw commandRefused(`The copy is not sound: ${state.reason}.`);
    const digest = sha256OfFile(unfinished);
    renameSync(unfinished, target);
    writeFileSync(`${target}.sha256`, `${digest}  ${basename(target)}\n`);
    return digest;
  } finally {
    rmSync(unfinished, { force: true });
  }
}

/** Removes the oldest backups of a folder until `keep` are left; gives the names of those removed. */
export function removeOldBackups(folder: string, keep: number): readonly string[] {
  const backups = readdirSync(folder)
    .filter((name) => /^tidemark-.*\.sqlite$/.test(name))
    .sort();
  const old = backups.slice(0, Math.max(0, backups.length - keep));
  for (const name of old)
    for (const suffix of ['', '.sha256']) rmSync(join(folder, name + suffix), { force: true });
  return old;
}

async function run(): Promise<void | null> {
  const { values, positionals } = parseArgs({
    options: { keep: { type: 'string' } },
    allowPositionals: true,
  });
  if (positionals.length > 1 || !/^[1-9]\d{0,5}$/.test(values.keep ?? '1')) return null;
  const { databaseFile } = readConfig(process.env);
  const folder = join(dirname(databaseFile), 'backups');
  const stamp = SYSTEM_CLOCK.now().replace(/[:.]/g, '-');
  const target = positionals[0] ?? join(folder, `tidemark-${stamp}.sqlite`);
  const digest = await backUp(databaseFile, target);
  console.log(`Backed up to ${target} (SHA-256 ${digest}).`);
  if (values.keep === undefined) return;
  for (const name of removeOldBackups(dirname(target), Number(values.keep))) console.log(`Removed ${name}.`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await runCommand(USAGE, run);
