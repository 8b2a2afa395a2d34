import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  compare,
  decimal,
  fraction,
  isMultipleOf,
  multiply,
  negate,
  subtract,
  toNumber,
} from '../../src/domain/exact/fraction.js';
import type { Fraction } from '../../src/domain/exact/fraction.js';

/** Larger than any score needs, small enough that three of them are combined without loss. */
const small = fc
  .tuple(fc.integer({ min: -20_000, max: 20_000 }), fc.integer({ min: 1, max: 1000 }))
  .map(([numerator, denominator]) => fraction(numerator, denominator));

/** Any parts that a fraction can hold. */
const any = fc
  .tuple(fc.maxSafeInteger(), fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER }))
  .map(([numerator, denominator]) => fraction(numerator, denominator));

const ZERO = fraction(0);
const ONE = fraction(1);

describe('the laws of arithmetic hold exactly', () => {
  it('order and grouping do not matter', () => {
    fc.assert(
      fc.property(small, small, small, (a, b, c) => {
        expect(add(a, b)).toEqual(add(b, a));
        expect(multiply(a, b)).toEqual(multiply(b, a));
        expect(add(add(a, b), c)).toEqual(add(a, add(b, c)));
        expect(multiply(multiply(a, b), c)).toEqual(multiply(a, multiply(b, c)));
        expect(multiply(a, add(b, c))).toEqual(add(multiply(a, b), multiply(a, c)));
      }),
    );
  });

  it('0 and 1 change nothing; the negative and the reciprocal undo', () => {
    fc.assert(
      fc.property(small, small, (a, b) => {
        expect(add(a, ZERO)).toEqual(a);
        expect(multiply(a, ONE)).toEqual(a);
        expect(multiply(a, ZERO)).toStrictEqual(ZERO);
        expect(add(a, negate(a))).toStrictEqual(ZERO);
        expect(subtract(add(a, b), b)).toEqual(a);
        if (a.numerator !== 0) {
          expect(multiply(a, fraction(a.denominator, a.numerator))).toEqual(ONE);
        }
      }),
    );
  });

  it('a fraction has one form, whatever it was made from', () => {
    fc.assert(
      fc.property(small, fc.integer({ min: -1000, max: 1000 }), (a, factor) => {
        fc.pre(factor !== 0);
        expect(fraction(a.numerator * factor, a.denominator * factor)).toStrictEqual(a);
      }),
    );
  });
});

describe('at any size, a result is exact or refused', () => {
  it('sums and products', () => {
    fc.assert(
      fc.property(any, any, (a, b) => {
        const [p, q, r, s] = [a.numerator, a.denominator, b.numerator, b.denominator].map(BigInt);
        if (p === undefined || q === undefined || r === undefined || s === undefined)
          throw new Error('Four parts.');
        expectExactOrRefused(() => add(a, b), p * s + r * q, q * s);
        expectExactOrRefused(() => multiply(a, b), p * r, q * s);
      }),
      { numRuns: 500 },
    );
  });

  it('sums whose large parts nearly cancel', () => {
    const numerator = fc.integer({ min: 2 ** 50, max: Number.MAX_SAFE_INTEGER });
    fc.assert(
      fc.property(numerator, fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 50 }), (n, d, e) => {
        const [a, b] = [fraction(n, d), fraction(-(n - 1), e)];
        expectExactOrRefused(
          () => add(a, b),
          BigInt(a.numerator) * BigInt(b.denominator) + BigInt(b.numerator) * BigInt(a.denominator),
          BigInt(a.denominator) * BigInt(b.denominator),
        );
      }),
      { numRuns: 500 },
    );
  });

  it('comparison is never refused and agrees with whole numbers of any length', () => {
    fc.assert(
      fc.property(any, any, (a, b) => {
        const difference =
          BigInt(a.numerator) * BigInt(b.denominator) - BigInt(b.numerator) * BigInt(a.denominator);
        expect(Math.sign(compare(a, b))).toBe(Number(difference > 0n) - Number(difference < 0n));
        expect(Math.sign(compare(b, a)) + Math.sign(compare(a, b))).toBe(0);
        expect(compare(a, a)).toBe(0);
      }),
      { numRuns: 500 },
    );
  });
});

describe('decimals', () => {
  const typed = fc
    .tuple(fc.integer({ min: -900_000_000, max: 900_000_000 }), fc.integer({ min: 0, max: 9 }))
    .map(([digits, places]) => ({ digits, places, value: digits / 10 ** places }));

  it('are read exactly as they were typed', () => {
    fc.assert(
      fc.property(typed, ({ digits, places, value }) => {
        expect(decimal(value)).toEqual(fraction(digits, 10 ** places));
      }),
      { numRuns: 1000 },
    );
  });

  it('come back as the number that was read', () => {
    fc.assert(
      fc.property(typed, ({ value }) => {
        expect(toNumber(decimal(value))).toBe(value === 0 ? 0 : value);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('multiples of a step', () => {
  it('are the products of the step with whole numbers, and nothing between them', () => {
    const step = small.filter((candidate) => candidate.numerator !== 0);
    fc.assert(
      fc.property(step, fc.integer({ min: -1000, max: 1000 }), (size, times) => {
        const multiple = multiply(size, fraction(times));
        expect(isMultipleOf(multiple, size)).toBe(true);
        expect(isMultipleOf(add(multiple, multiply(size, fraction(1, 3))), size)).toBe(false);
      }),
    );
  });
});

function expectExactOrRefused(compute: () => Fraction, numerator: bigint, denominator: bigint): void {
  let result: Fraction;
  try {
    result = compute();
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError);
    return;
  }
  expect(BigInt(result.numerator) * denominator).toBe(numerator * BigInt(result.denominator));
}
