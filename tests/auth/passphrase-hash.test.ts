import { parseOptions } from '@node-rs/argon2';
import { describe, expect, it } from 'vitest';
import { DUMMY_HASH, hashPassphrase, isPassphraseOf } from '../../src/auth/passphrase-hash.js';

const PASSPHRASE = 'sandpiper above the mudflat';

describe('the hash of a passphrase', () => {
  it('is argon2id with 19 MiB, two passes and one lane, the least that OWASP names', async () => {
    const hash = await hashPassphrase(PASSPHRASE);
    expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  });

  it('has a salt of its own each time', async () => {
    expect(await hashPassphrase(PASSPHRASE)).not.toBe(await hashPassphrase(PASSPHRASE));
  });

  it('is of that passphrase alone', async () => {
    const hash = await hashPassphrase(PASSPHRASE);
    expect(await isPassphraseOf(hash, PASSPHRASE)).toBe(true);
    expect(await isPassphraseOf(hash, `${PASSPHRASE} `)).toBe(false);
    expect(await isPassphraseOf(hash, '')).toBe(false);
  });

  it('is stood in for where there is none by one that costs the same, and the answer is no', async () => {
    expect(parseOptions(DUMMY_HASH)).toEqual(parseOptions(await hashPassphrase(PASSPHRASE)));
    expect(await isPassphraseOf(null, PASSPHRASE)).toBe(false);
  });
});
