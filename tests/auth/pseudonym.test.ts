import { describe, expect, it } from 'vitest';
import { pseudonymsOf } from '../../src/auth/pseudonym.js';

const KEY = Buffer.alloc(32, 1);

describe('pseudonyms', () => {
  it('are the same for the same id, kind, team and key, and differ where one of them does', () => {
    const made = [
      pseudonymsOf(KEY, 'one')('person', 'a'),
      pseudonymsOf(KEY, 'one')('person', 'b'),
      pseudonymsOf(KEY, 'one')('referral', 'a'),
      pseudonymsOf(KEY, 'other')('person', 'a'),
      pseudonymsOf(Buffer.alloc(32, 2), 'one')('person', 'a'),
    ];
    expect(new Set(made).size).toBe(made.length);
    expect(pseudonymsOf(KEY, 'one')('person', 'a')).toBe(made[0]);
  });

  it('is HMAC-SHA-256 under the key of the team, the first 128 bits', async () => {
    // Worked by the Web Crypto API, another implementation.
    const hmac = async (key: Uint8Array, text: string): Promise<Uint8Array> => {
      const imported = await crypto.subtle.importKey(
        'raw',
        new Uint8Array(key),
        { name: 'HMAC', hash: 'SHA-256' },
        false,
        ['sign'],
      );
      return new Uint8Array(await crypto.subtle.sign('HMAC', imported, new TextEncoder().encode(text)));
    };
    const expected = await hmac(await hmac(KEY, 'team:one'), 'person:a');
    expect(pseudonymsOf(KEY, 'one')('person', 'a')).toBe(Buffer.from(expected).toString('hex').slice(0, 32));
  });
});
