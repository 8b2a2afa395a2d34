/** An exact rational number in lowest terms; the denominator is positive. */
export interface Fraction {
  readonly numerator: number;
  readonly denominator: number;
}

/**
 * Makes an exact fraction from two whole numbers.
 *
 * Scores are kept exact because a threshold is met by equality: 13.1 s - 11.4 s falls short of 1.7 s in floating point.
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
  if (Number.isSafeInteger(value)) return fraction(value);
  const match = /^(-?)(\d+)(?:\.(\d{1,9}))?$/.exec(withoutExponent(value));
  if (match === null) throw new RangeError(`Not a plain decimal number: ${String(value)}`);
  const [, sign, whole = '', places = ''] = match;
  return fraction(Number(`${sign}${whole}${places}`), 10 ** places.length);
}

/**
 * Sum of two fractions, exact.
 *
 * @throws RangeError when the sum is too long to be held exactly
 * @example add(1/2, 1/3) -> 5/6
 */
export function add(a: Fraction, b: Fraction): Fraction {
  const shared = greatestCommonDivisor(a.denominator, b.denominator);
  const [factorA, factorB] = [b.denominator / shared, a.denominator / shared];
  return fraction(
    exactProduct(a.numerator, factorA) + exactProduct(b.numerator, factorB),
    exactProduct(a.denominator, factorA),
  );
}

/**
 * First less second, exact.
 *
 * @throws RangeError when the difference is too long to be held exactly
 * @example subtract(1/2, 1/3) -> 1/6
 */
export function subtract(a: Fraction, b: Fraction): Fraction {
  return add(a, negate(b));
}

/**
 * Product of two fractions, exact.
 *
 * @throws RangeError when the product is too long to be held exactly
 * @example multiply(2/3, 3/4) -> 1/2
 */
export function multiply(a: Fraction, b: Fraction): Fraction {
  const sharedA = greatestCommonDivisor(Math.abs(a.numerator), b.denominator);
  const sharedB = greatestCommonDivisor(Math.abs(b.numerator), a.denominator);
  return fraction(
    exactProduct(a.numerator / sharedA, b.numerator / sharedB),
    exactProduct(a.denominator / sharedB, b.denominator / sharedA),
  );
}

/** The fraction with its sign turned. @example negate(1/2) -> -1/2 */
export function negate(a: Fraction): Fraction {
  return fraction(-a.numerator, a.denominator);
}

/**
 * Negative, zero or positive as a is below, equal to or above b; exact for every fraction.
 *
 * @example compare(1/2, 2/4) -> 0
 */
export function compare(a: Fraction, b: Fraction): number {
  const left = a.numerator * b.denominator;
  const right = b.numerator * a.denominator;
  if (Number.isSafeInteger(left) && Number.isSafeInteger(right)) return left - right;
  return Number(BigInt(a.numerator) * BigInt(b.denominator) - BigInt(b.numerator) * BigInt(a.denominator));
}

/** The nearest floating-point number, for statistics and display only. @example toNumber(1/4) -> 0.25 */
export function toNumber(a: Fraction): number {
  return a.numerator / a.denominator;
}

/** Whether a is a whole multiple of step; nothing is a multiple of 0. @example isMultipleOf(7/2, 1/2) -> true */
export function isMultipleOf(a: Fraction, step: Fraction): boolean {
  // In lowest terms a/step is whole exactly when each part divides on its own, so no product can grow too long.
  return step.denominator % a.denominator === 0 && a.numerator % step.numerator === 0;
}

/** A number below 0.000001 is written with an exponent by default; those of up to 9 places are written out. */
function withoutExponent(value: number): string {
  const text = String(value);
  if (!text.includes('e-')) return text;
  const written = value.toFixed(9);
  return Number(written) === value ? written : text;
}

function exactProduct(a: number, b: number): number {
  const product = a * b;
  if (!Number.isSafeInteger(product)) throw new RangeError('Too long to be held exactly.');
  return product;
}

function greatestCommonDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x === 0 ? 1 : x;
}
