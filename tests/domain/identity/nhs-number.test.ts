// Rule: NHS Data Dictionary, NHS NUMBER (Modulus 11). Numbers of the range 999 000 0000 to 999 999 9999 are never
// issued; the ones below were worked out by hand from the rule. 943 476 5919 is a number printed in public manuals.
import { describe, expect, it } from 'vitest';
import { checkDigitOf, checkNhsNumber, formatNhsNumber } from '../../../src/domain/identity/nhs-number.js';

const TEST_NUMBERS = [
  '9990000018',
  '9990000026',
  '9990000034',
  '9990000042',
  '9990000050',
  '9990000069',
  '9990000077',
];

describe('the check digit', () => {
  it('943 476 591: 90+36+24+28+42+30+20+27+2 = 299, remainder 2, check digit 9', () => {
    expect(checkDigitOf('943476591')).toBe(9);
  });

  it('counts 11 as 0', () => {
    // 999 000 005: 90+81+72+10 = 253 = 23 x 11, remainder 0.
    expect(checkDigitOf('999000005')).toBe(0);
  });

  it.each(['999000000', '999000014'])('does not exist for %s, whose remainder is 1', (prefix) => {
    expect(checkDigitOf(prefix)).toBeNull();
  });

  it.each(['999000000', '999000014'])('no last digit makes %s valid', (prefix) => {
    for (const last of '0123456789') {
      expect(checkNhsNumber(prefix + last, 'demo')).toEqual({ kind: 'invalid', fault: 'wrong-check-digit' });
    }
  });
});

describe('checking a number', () => {
  it('accepts a right number of a live team', () => {
    expect(checkNhsNumber('9434765919', 'live')).toEqual({ kind: 'valid', nhsNumber: '9434765919' });
  });

  it.each(['943 476 5919', '943-476-5919', ' 943 476 5919 '])('reads "%s" as typed', (text) => {
    expect(checkNhsNumber(text, 'live')).toEqual({ kind: 'valid', nhsNumber: '9434765919' });
  });

  it.each(TEST_NUMBERS)('accepts %s for a demo team and never for a live one', (text) => {
    expect(checkNhsNumber(text, 'demo')).toEqual({ kind: 'valid', nhsNumber: text });
    expect(checkNhsNumber(text, 'live')).toEqual({ kind: 'invalid', fault: 'test-range' });
  });

  it('refuses a number outside the test range for a demo team', () => {
    expect(checkNhsNumber('9434765919', 'demo')).toEqual({ kind: 'invalid', fault: 'outside-test-range' });
  });

  it('allows only one last digit', () => {
    const accepted = [...'0123456789'].filter(
      (last) => checkNhsNumber(`999000005${last}`, 'demo').kind === 'valid',
    );
    expect(accepted).toEqual(['0']);
  });

  it.each([...'0123456789'])('refuses ten times %s, though it passes Modulus 11', (digit) => {
    expect(checkDigitOf(digit.repeat(9))).toBe(Number(digit));
    expect(checkNhsNumber(digit.repeat(10), 'live')).toEqual({ kind: 'invalid', fault: 'repeated-digit' });
    expect(checkNhsNumber(digit.repeat(10), 'demo')).toEqual({ kind: 'invalid', fault: 'repeated-digit' });
  });

  it.each([
    ['nine digits', '943476591'],
    ['eleven digits', '94347659190'],
    ['a letter', '943476591A'],
    ['another separator', '943.476.5919'],
    ['digits of another script', '९४३४७६५९१९'],
    ['nothing', ''],
  ])('refuses %s', (_, text) => {
    expect(checkNhsNumber(text, 'live')).toEqual({ kind: 'invalid', fault: 'not-ten-digits' });
  });
});

describe('showing a number', () => {
  it('groups it as people read it', () => {
    const checked = checkNhsNumber('9990000018', 'demo');
    expect(checked.kind === 'valid' ? formatNhsNumber(checked.nhsNumber) : '').toBe('999 000 0018');
  });
});
