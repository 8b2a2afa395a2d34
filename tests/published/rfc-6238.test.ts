// Source: RFC 6238, appendix B, the table for SHA-1 with the ASCII secret 12345678901234567890. The table prints eight
// digits; by RFC 4226 section 5.3 the code of six digits is the same number modulo 10^6: its last six digits.
import { describe, expect, it } from 'vitest';
import { stepOfCode } from '../../src/auth/second-factor.js';

/** The secret of the table in Base32 (RFC 4648). */
const SECRET = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ';

const TABLE = [
  { seconds: 59, step: 0x1, totp: '94287082' },
  { seconds: 1111111109, step: 0x23523ec, totp: '07081804' },
  { seconds: 1111111111, step: 0x23523ed, totp: '14050471' },
  { seconds: 1234567890, step: 0x273ef07, totp: '89005924' },
  { seconds: 2000000000, step: 0x3f940aa, totp: '69279037' },
  { seconds: 20000000000, step: 0x27bc86aa, totp: '65353130' },
] as const;

describe.each(TABLE)('the code of RFC 6238 at $seconds s', ({ seconds, step, totp }) => {
  const code = totp.slice(-6);

  it('is taken at its instant, as the step that the table prints', () => {
    expect(stepOfCode(SECRET, code, seconds * 1000)).toBe(step);
  });

  it('is taken one step early or late, as the step that it is of, and not two', () => {
    for (const drift of [-30, 30]) expect(stepOfCode(SECRET, code, (seconds + drift) * 1000)).toBe(step);
    for (const drift of [-60, 60]) {
      if (seconds + drift < 0) continue;
      expect(stepOfCode(SECRET, code, (seconds + drift) * 1000)).toBeNull();
    }
  });
});

it.each(['', '28708', '2870820', 'abcdef', '-87082', '２８７０８２'])(
  'takes nothing that is not six digits: "%s"',
  (code) => {
    expect(stepOfCode(SECRET, code, 59_000)).toBeNull();
  },
);

it('takes a code as authenticator programs show it, in two groups', () => {
  expect(stepOfCode(SECRET, ' 287 082 ', 59_000)).toBe(1);
});
