import { checkDigitOf } from '../src/domain/identity/nhs-number.js';

const NUMBERS = 1_000_000;
/** Shares no factor with 1,000,000, so that every number comes once before any comes again. */
const STRIDE = 387_911;

/**
 * Hands out valid NHS numbers of the test range, 999 000 0000 to 999 999 9999, none of them twice.
 *
 * @param seed whole number: where in the range it begins
 * @returns a function that gives the next number; it throws RangeError when the range is used up
 */
export function nhsNumbersOfTestRange(seed: number): () => string {
  let taken = 0;
  return () => {
    while (taken < NUMBERS) {
      const place = (seed + taken * STRIDE) % NUMBERS;
      taken += 1;
      const digits = `999${String(place).padStart(6, '0')}`;
      const check = checkDigitOf(digits);
      if (check !== null && digits !== '999999999') return `${digits}${check}`;
    }
    throw new RangeError('Every number of the test range has been handed out.');
  };
}
