import { expect, it } from 'vitest';
import { makeSecondFactorSecret, secondFactorUri } from '../../src/auth/second-factor.js';

it('makes secrets of 160 bits, each another one', () => {
  const secrets = Array.from({ length: 50 }, makeSecondFactorSecret);
  // 160 bits are 32 letters of Base32.
  for (const secret of secrets) expect(secret).toMatch(/^[A-Z2-7]{32}$/);
  expect(new Set(secrets).size).toBe(50);
});

it('gives authenticator programs the secret, whose it is, and the rules', () => {
  const uri = new URL(secondFactorUri('GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ', 'h.turnstone@marram'));
  expect(uri.protocol).toBe('otpauth:');
  expect(decodeURIComponent(uri.pathname)).toBe('/Tidemark:h.turnstone@marram');
  expect(Object.fromEntries(uri.searchParams)).toEqual({
    issuer: 'Tidemark',
    secret: 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ',
    algorithm: 'SHA1',
    digits: '6',
    period: '30',
  });
});
