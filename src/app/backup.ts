import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { openConnection } from '../storage/connection.js';
import { inspectDatabaseFile } from '../storage/database-file.js';
import { readConfig } from './config.js';
import { SYSTEM_CLOCK } from './system-clock.js';

/**
 * Copies the record while work goes on, checks the copy, and writes its checksum beside it.
 *
 * @param databaseFile the record
 * @param target file of the copy; it appears only when it is whole
 * @returns SHA-256 of the copy in hexadecimal
 * @throws Error when the copy is not sound
 */
export async function backUp(databaseFile: string, target: string): Promise<string> {
  mkdirSync(dirname(target), { recursive: true });
  const unfinished = `${target}.unfinished`;
  const connection = openConnection(databaseFile);
  try {
    await connection.backUpTo(unfinished);
  } finally {
    await connection.close();
  }
  const state = inspectDatabaseFile(unfinished);
  if (state.kind === 'unsound') throw new Error(`The copy is not sound: ${state.reason}.`);
  const digest = sha256Of(unfinished);
  renameSync(unfinished, target);
  writeFileSync(`${target}.sha256`, `${digest}  ${basename(target)}\n`);
  return digest;
}

/** SHA-256 of a file in hexadecimal. */
export function sha256Of(file: string): string {
  return createHash('sha256').update(readFileSync(file)).digest('hex');
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

async function run(): Promise<void> {
  const { values, positionals } = parseArgs({
    options: { keep: { type: 'string' } },
    allowPositionals: true,
  });
  const keep = values.keep === undefined ? null : Number(values.keep);
  if (keep !== null && (!Number.isInteger(keep) || keep < 1))
    throw new Error('--keep takes a whole number from 1.');
  const { databaseFile } = readConfig(process.env);
  const folder = join(dirname(databaseFile), 'backups');
  const stamp = SYSTEM_CLOCK.now().replace(/[:.]/g, '-');
  const target = positionals[0] ?? join(folder, `tidemark-${stamp}.sqlite`);
  const digest = await backUp(databaseFile, target);
  console.log(`Backed up to ${target} (SHA-256 ${digest}).`);
  const removed = keep === null ? [] : removeOldBackups(dirname(target), keep);
  for (const name of removed) console.log(`Removed ${name}.`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await run();
