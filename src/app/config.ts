import { isIP } from 'node:net';
import { commandRefused } from './run-command.js';

/** Settings of the process, from the environment. */
export interface Config {
  readonly databaseFile: string;
  readonly host: string;
  readonly port: number;
  /** Addresses or networks of proxies that are believed when they say for whom they ask. */
  readonly trustedProxies: readonly string[];
}

/** Where the record is kept unless `TIDEMARK_DB` says otherwise. */
const DEFAULT_DATABASE_FILE = 'var/tidemark.sqlite';

/**
 * Reads the environment: `TIDEMARK_DB`, `TIDEMARK_HOST` (127.0.0.1), `TIDEMARK_PORT` (4100; 0 takes any free one) and
 * `TIDEMARK_TRUSTED_PROXIES` (none).
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
  const trustedProxies = proxiesOf(environment['TIDEMARK_TRUSTED_PROXIES']);
  return { databaseFile, host, port: Number(port), trustedProxies };
}

function proxiesOf(text: string | undefined): readonly string[] {
  if (text === undefined) return [];
  const proxies = text.split(',').map((proxy) => proxy.trim());
  if (proxies.every(isAddressOrNetwork)) return proxies;
  throw commandRefused(
    'TIDEMARK_TRUSTED_PROXIES must name addresses or networks, such as 127.0.0.1,10.0.0.0/8.',
  );
}

function isAddressOrNetwork(text: string): boolean {
  const [, address = '', bits] = /^([^/]*)(?:\/(\d{1,3}))?$/.exec(text) ?? [];
  const version = isIP(address);
  // Every address of the world is no proxy: anybody could then make up where they are.
  const isNetwork = bits === undefined || (Number(bits) > 0 && Number(bits) <= (version === 4 ? 32 : 128));
  return version !== 0 && isNetwork;
}
