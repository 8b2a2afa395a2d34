import { createHmac, randomBytes } from 'node:crypto';

/** Bytes of a key for pseudonyms. */
export const PSEUDONYM_KEY_BYTES = 32;
const PSEUDONYM_BYTES = 16;

/** A key that nobody has, and that is forgotten with the file it was made for. */
export function newPseudonymKey(): Uint8Array {
  return randomBytes(PSEUDONYM_KEY_BYTES);
}

/**
 * Gives pseudonyms by HMAC-SHA-256: the same for the same id and key, and of no use without the key. Each team has a key of
 * its own that follows from the key of the service, so that the files of two teams do not fit together.
 *
 * @param key 32 bytes
 * @returns 32 hexadecimal digits for an id of a kind
 */
export function pseudonymsOf(key: Uint8Array, teamId: string): (kind: string, id: string) => string {
  const teamKey = createHmac('sha256', key).update(`team:${teamId}`).digest();
  return (kind, id) =>
    createHmac('sha256', teamKey)
      .update(`${kind}:${id}`)
      .digest()
      .subarray(0, PSEUDONYM_BYTES)
      .toString('hex');
}
