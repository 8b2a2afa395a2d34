/** An exact rational number in lowest terms; the denominator is positive. */
export interface Fraction {
  readonly numerator: number;
  readonly denominator: number;
}

/**
 * Makes an exact fraction from two whole numbers.
 *
 * Scores are kept exact because a threshold is met by equality: 2.6 - 2.1 is not 0.5 in floating point.
 *
 * @param numerator whole number, magnitude below 2^53
 * @param denominator whole number, not zero
 * @returns the fraction in lowest terms
 * @throws RangeError when a part is not a safe whole number or the denominator is zero
 * @example fraction(6, 4) -> 3/2
 */
export function fraction(numerator: number, denominator = 1): Fraction {
  if (!Number.isSafeInteger(numerator) || !Number.isSafeInteger(denominator) || denominator === 0) {
    throw new RangeError(`Not a fraction of safe whole numbers: ${numerator}/${denominator}`);
  }
  const sign = denominator < 0 ? -1 : 1;
  const divisor = greatestCommonDivisor(Math.abs(numerator), Math.abs(denominator));
  return {
    numerator: numerator === 0 ? 0 : (sign * numerator) / divisor,
    denominator: Math.abs(denominator) / divisor,
  };
}

/**
 * Reads a decimal number exactly as it is written (11.4 becomes 57/5).
 *
 * @param value a finite number with at most 9 decimal places, as typed or read from JSON
 * @returns the exact fraction
 * @throws RangeError when the number is not finite, or too long to be held exactly
 * @example decimal(47.5) -> 95/2
 */
export function decimal(value: number): Fraction {
  const match = /^(-?)(\d+)(?:\.(\d{1,9}))?$/.exec(String(value));
  if (match === null) throw new RangeError(`Not a plain decimal number: ${String(value)}`);
  const [, sign, whole = '', places = ''] = match;
  return fraction(Number(`${sign}${whole}${places}`), 10 ** places.length);
}

/** Sum of two fractions, exact. @example add(1/2, 1/3) -> 5/6 */
export function add(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

/** First less second, exact. @example subtract(1/2, 1/3) -> 1/6 */
export function subtract(a: Fraction, b: Fraction): Fraction {
  return add(a, negate(b));
}

/** Product of two fractions, exact. @example multiply(2/3, 3/4) -> 1/2 */
export function multiply(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.numerator, a.denominator * b.denominator);
}

/** The fraction with its sign turned. @example negate(1/2) -> -1/2 */
export function negate(a: Fraction): Fraction {
  return fraction(-a.numerator, a.denominator);
}

/** Negative, zero or positive as a is below, equal to or above b; exact. @example compare(1/2, 2/4) -> 0 */
export function compare(a: Fraction, b: Fraction): number {
  return a.numerator * b.denominator - b.numerator * a.denominator;
}

/** The nearest floating-point number, for statistics and display only. @example toNumber(1/4) -> 0.25 */
export function toNumber(a: Fraction): number {
  return a.numerator / a.denominator;
}

/** Whether a is a whole multiple of step. @example isMultipleOf(7/2, 1/2) -> true */
export function isMultipleOf(a: Fraction, step: Fraction): boolean {
  return (a.numerator * step.denominator) % (a.denominator * step.numerator) === 0;
}

function greatestCommonDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x === 0 ? 1 : x;
}
