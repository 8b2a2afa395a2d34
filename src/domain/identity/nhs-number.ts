/** Ten digits that pass the check, without spaces. */
export type NhsNumber = string & { readonly __brand: 'NhsNumber' };

/** Why a typed NHS number was refused. */
export type NhsNumberFault =
  'not-ten-digits' | 'repeated-digit' | 'wrong-check-digit' | 'test-range' | 'outside-test-range';

/** Which teams may hold which numbers: demo teams the test range 999 000 0000 to 999 999 9999 only, live teams never. */
export type NhsNumberRange = 'live' | 'demo';

/**
 * Checks an NHS number.
 *
 * @param text ten digits; spaces and hyphens between groups are allowed
 * @param range whether the team is live or a demo team
 * @returns the ten digits, or the first fault found
 * @source NHS Data Dictionary, NHS NUMBER (Modulus 11). The repeated-digit rule is ours: all ten repeated-digit
 *   numbers pass Modulus 11, none is issued.
 * @example checkNhsNumber('943 476 5919', 'live') -> valid 9434765919
 */
export function checkNhsNumber(
  text: string,
  range: NhsNumberRange,
):
  | { readonly kind: 'valid'; readonly nhsNumber: NhsNumber }
  | { readonly kind: 'invalid'; readonly fault: NhsNumberFault } {
  const digits = text.replace(/[ -]/g, '');
  if (!/^\d{10}$/.test(digits)) return { kind: 'invalid', fault: 'not-ten-digits' };
  if (/^(\d)\1{9}$/.test(digits)) return { kind: 'invalid', fault: 'repeated-digit' };
  if (checkDigitOf(digits) !== Number(digits[9])) return { kind: 'invalid', fault: 'wrong-check-digit' };
  const isTestNumber = digits.startsWith('999');
  if (isTestNumber && range === 'live') return { kind: 'invalid', fault: 'test-range' };
  if (!isTestNumber && range === 'demo') return { kind: 'invalid', fault: 'outside-test-range' };
  return { kind: 'valid', nhsNumber: digits as NhsNumber };
}

/**
 * The check digit of the first nine digits: weights 10 to 2, sum modulo 11 taken from 11; 11 counts as 0.
 *
 * @returns 0 to 9, or null when the number can have no check digit (remainder 10)
 */
export function checkDigitOf(digits: string): number | null {
  let sum = 0;
  for (let position = 0; position < 9; position += 1) sum += Number(digits[position]) * (10 - position);
  const check = 11 - (sum % 11);
  if (check === 11) return 0;
  return check === 10 ? null : check;
}

/** The number as people read it. @example formatNhsNumber('9434765919') -> '943 476 5919' */
export function formatNhsNumber(nhsNumber: NhsNumber): string {
  return `${nhsNumber.slice(0, 3)} ${nhsNumber.slice(3, 6)} ${nhsNumber.slice(6)}`;
}
