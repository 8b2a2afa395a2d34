import { accessSync, constants, existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { damageOf } from '../storage/database-file.js';
import { commandRefused } from './run-command.js';

/**
 * Makes the folder of a record where it is missing, and holds both to being writable: the log of the record is written
 * beside it.
 *
 * @throws the refusal of a command in words
 */
export function requireWritable(file: string): void {
  const folder = dirname(file);
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.W_OK);
  } catch (error) {
    throw commandRefused(`The folder ${folder} cannot be written (${codeOf(error)}): ${ADVICE}`, error);
  }
  if (!existsSync(file)) return;
  try {
    accessSync(file, constants.R_OK | constants.W_OK);
  } catch (error) {
    throw commandRefused(`${file} cannot be written (${codeOf(error)}): ${ADVICE}`, error);
  }
}

const ADVICE =
  'the record needs a file and a folder that this user may write, on a disk that is not read-only.';

/**
 * Holds a record to being undamaged before it is served: the order of its pages and every reference in it. A record that
 * is not there yet is none.
 *
 * @throws the refusal of a command in words; nothing was changed
 */
export function requireSound(file: string): void {
  if (!existsSync(file)) return;
  const damage = damageOf(file);
  if (damage === null) return;
  throw commandRefused(
    `${file} is damaged and is not served: ${damage}. Keep the file, and restore the latest backup: npm run db:restore -- BACKUP`,
  );
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
}
