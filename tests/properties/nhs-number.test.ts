import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDigitOf, checkNhsNumber, formatNhsNumber } from '../../src/domain/identity/nhs-number.js';

/** Valid numbers of the test range 999 000 0000 to 999 999 9999, which is never issued. */
const validNumber = fc
  .integer({ min: 0, max: 999_999 })
  .map((middle) => `999${String(middle).padStart(6, '0')}`)
  .filter((prefix) => checkDigitOf(prefix) !== null && prefix !== '999999999')
  .map((prefix) => `${prefix}${String(checkDigitOf(prefix))}`);

describe('NHS number', () => {
  it('with its check digit is accepted for a demo team and refused for a live one', () => {
    fc.assert(
      fc.property(validNumber, (digits) => {
        expect(checkNhsNumber(digits, 'demo')).toEqual({ kind: 'valid', nhsNumber: digits });
        expect(checkNhsNumber(digits, 'live')).toEqual({ kind: 'invalid', fault: 'test-range' });
      }),
    );
  });

  it('is invalid once any one digit is changed', () => {
    fc.assert(
      fc.property(validNumber, (digits) => {
        for (let position = 0; position < 10; position += 1) {
          for (let change = 1; change <= 9; change += 1) {
            const digit = (Number(digits[position]) + change) % 10;
            const changed = digits.slice(0, position) + String(digit) + digits.slice(position + 1);
            expect(checkNhsNumber(changed, 'demo').kind).toBe('invalid');
            expect(checkNhsNumber(changed, 'live').kind).toBe('invalid');
          }
        }
      }),
      { numRuns: 50 },
    );
  });

  it('is invalid once two different neighbouring digits change places', () => {
    fc.assert(
      fc.property(validNumber, fc.integer({ min: 0, max: 8 }), (digits, position) => {
        const [left = '', right = ''] = digits.slice(position, position + 2);
        fc.pre(left !== right);
        const swapped = digits.slice(0, position) + right + left + digits.slice(position + 2);
        expect(checkNhsNumber(swapped, 'demo').kind).toBe('invalid');
        expect(checkNhsNumber(swapped, 'live').kind).toBe('invalid');
      }),
    );
  });

  it('is read back from the form in which it is shown', () => {
    fc.assert(
      fc.property(validNumber, (digits) => {
        const checked = checkNhsNumber(digits, 'demo');
        if (checked.kind === 'invalid') throw new Error('The number is valid.');
        expect(checkNhsNumber(formatNhsNumber(checked.nhsNumber), 'demo')).toEqual(checked);
      }),
    );
  });

  it('that is no run of ten digits is refused, whatever was typed', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        fc.pre(!/^\d{10}$/.test(text.replace(/[ -]/g, '')));
        expect(checkNhsNumber(text, 'live')).toEqual({ kind: 'invalid', fault: 'not-ten-digits' });
      }),
    );
  });
});
