import { hash, randomBytes } from 'node:crypto';

/** A new API token: the secret, shown once, and the hash that is stored. */
export interface NewToken {
  readonly secret: string;
  readonly hash: string;
}

/**
 * Makes an API token of 256 random bits.
 *
 * @returns the secret with the prefix `tdm_`, and its hash
 */
export function makeToken(): NewToken {
  const secret = `tdm_${randomBytes(32).toString('base64url')}`;
  return { secret, hash: hashToken(secret) };
}

/**
 * The stored form of a token. A plain digest is enough: the secret is random and long, so it cannot be guessed.
 *
 * @returns SHA-256 in hexadecimal
 */
export function hashToken(secret: string): string {
  return hash('sha256', secret);
}
