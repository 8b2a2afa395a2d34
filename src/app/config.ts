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
 * @throws Error when the port is no port
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const port = Number(environment['TIDEMARK_PORT'] ?? '4100');
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new Error('TIDEMARK_PORT must be a whole number from 0 to 65535.');
  }
  return {
    databaseFile: environment['TIDEMARK_DB'] ?? DEFAULT_DATABASE_FILE,
    host: environment['TIDEMARK_HOST'] ?? '127.0.0.1',
    port,
  };
}
