import { PSEUDONYM_KEY_BYTES } from '../auth/pseudonym.js';
import { commandRefused } from './run-command.js';

/**
 * Reads `TIDEMARK_PSEUDONYM_KEY` from the environment: the key of pseudonyms in files for analysis.
 *
 * @returns null where it is not set
 * @throws the refusal of a command when it is no key
 */
export function readPseudonymKey(
  environment: Readonly<Record<string, string | undefined>>,
): Uint8Array | null {
  const key = environment['TIDEMARK_PSEUDONYM_KEY'];
  if (key === undefined) return null;
  if (/^[0-9a-f]{64}$/i.test(key)) return Buffer.from(key, 'hex');
  throw commandRefused(
    `TIDEMARK_PSEUDONYM_KEY must be ${2 * PSEUDONYM_KEY_BYTES} hexadecimal digits, made at random and kept secret.`,
  );
}
