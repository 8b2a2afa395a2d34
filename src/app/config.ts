import { commandRefused } from './run-command.js';

/** Settings of the process, from the environment. */
export interface Config {
  readonly databaseFile: string;
  readonly host: string;
  readonly port: number;
}

/** Where the record is kept unless `TIDEMARK_DB` says otherwise. */
export const DEFAULT_DATABASE_FILE = 'var/tidemark.sqlite';

/**
 * Reads the environment: `TIDEMARK_DB`, `TIDEMARK_HOST` (127.0.0.1) and `TIDEMARK_PORT` (4100; 0 takes any free one).
 *
 * A variable that is set and empty is refused: an empty file name would be a record in memory, an empty host every
 * address of the machine.
 *
 * @throws the refusal of a command when one of them cannot be used
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const databaseFile = environment['TIDEMARK_DB'] ?? DEFAULT_DATABASE_FILE;
  if (databaseFile.trim() === '' || databaseFile.startsWith(':memory:')) {
    throw commandRefused('TIDEMARK_DB must name a file, such as var/tidemark.sqlite.');
  }
  const host = environment['TIDEMARK_HOST'] ?? '127.0.0.1';
  if (host.trim() === '') {
    throw commandRefused('TIDEMARK_HOST must name one address, such as 127.0.0.1.');
  }
  const port = environment['TIDEMARK_PORT'] ?? '4100';
  if (!/^\d{1,5}$/.test(port) || Number(port) > 65_535) {
    throw commandRefused('TIDEMARK_PORT must be a whole number from 0 to 65535.');
  }
  return { databaseFile, host, port: Number(port) };
}
