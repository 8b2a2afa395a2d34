import { hash, verify } from '@node-rs/argon2';

/**
 * Argon2id with 19 MiB of memory, two passes and one lane.
 *
 * @source OWASP Password Storage Cheat Sheet, Argon2id: m = 19456 KiB, t = 2, p = 1 (from memory, check before use)
 */
const COST = {
  // Argon2id of the package's closed set, whose names are not there at run time.
  algorithm: 2,
  memoryCost: 19_456,
  timeCost: 2,
  parallelism: 1,
} as const;

/** Takes the place of a hash where there is none, so that the work is the same. It is of no passphrase that is known. */
export const DUMMY_HASH =
  '$argon2id$v=19$m=19456,t=2,p=1$58VLZRLfGdLxoTjOLzg0HA$eanJJ4jxuNrsLuiTbGmyP55gReqNl9F2+A0Ut4v7FBU';

/**
 * The form in which a passphrase is stored, with a salt of its own. Never call it inside a transaction: it takes time.
 *
 * @param passphrase normalised
 */
export async function hashPassphrase(passphrase: string): Promise<string> {
  return hash(passphrase, COST);
}

/**
 * Whether a passphrase is the one of a hash. Where there is no hash the same work is done, and the answer is no.
 *
 * @param passphrase normalised
 */
export async function isPassphraseOf(passphraseHash: string | null, passphrase: string): Promise<boolean> {
  const matches = await verify(passphraseHash ?? DUMMY_HASH, passphrase);
  return matches && passphraseHash !== null;
}
