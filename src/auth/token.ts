import { hash, randomBytes } from 'node:crypto';

/** A new secret: itself, shown once, and the hash that is stored. */
export interface NewToken {
  readonly secret: string;
  readonly hash: string;
}

/** What a secret opens; its prefix says so, and one kind is never taken for another. */
const PREFIXES = { api: 'tdm_', session: 'tds_', invitation: 'tdi_' } as const;

/**
 * Makes a secret of 256 random bits.
 *
 * @returns the secret with the prefix of its kind, and its hash
 */
export function makeToken(kind: keyof typeof PREFIXES = 'api'): NewToken {
  const secret = `${PREFIXES[kind]}${randomBytes(32).toString('base64url')}`;
  return { secret, hash: hashToken(secret) };
}

/**
 * The stored form of a secret. A plain digest is enough: the secret is random and long, so it cannot be guessed.
 *
 * @returns SHA-256 in hexadecimal
 */
export function hashToken(secret: string): string {
  return hash('sha256', secret);
}

/**
 * The stored form of what sign-in attempts are counted by: a sign-in name or an address.
 *
 * @param part what the text is, so that a name and an address of the same text are two things
 */
export function hashKey(part: string, text: string): string {
  return hash('sha256', `${part}:${text}`);
}
