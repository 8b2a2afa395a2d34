import { describe, expect, it } from 'vitest';
import { readPseudonymKey } from '../../src/app/pseudonym-key.js';

describe('the key of pseudonyms in the environment', () => {
  it('is 64 hexadecimal digits, or is not set', () => {
    expect(readPseudonymKey({})).toBeNull();
    const key = readPseudonymKey({ TIDEMARK_PSEUDONYM_KEY: '0a'.repeat(32) });
    expect(Buffer.from(key ?? []).toString('hex')).toBe('0a'.repeat(32));
  });

  it.each(['', 'sandpiper', '0a'.repeat(31), `${'0a'.repeat(32)}0`])('is refused as %j', (key) => {
    expect(() => readPseudonymKey({ TIDEMARK_PSEUDONYM_KEY: key })).toThrow(/64 hexadecimal digits/);
  });
});
