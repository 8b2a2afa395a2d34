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
} from '../../../src/domain/exact/fraction.js';

const LARGEST = Number.MAX_SAFE_INTEGER;

describe('making a fraction', () => {
  it('reduces to lowest terms', () => {
    expect(fraction(6, 4)).toEqual({ numerator: 3, denominator: 2 });
  });

  it('keeps the sign in the numerator', () => {
    expect(fraction(1, -2)).toEqual({ numerator: -1, denominator: 2 });
    expect(fraction(-1, -2)).toEqual({ numerator: 1, denominator: 2 });
  });

  it('has one form of zero, without a sign', () => {
    expect(fraction(0, -7)).toStrictEqual({ numerator: 0, denominator: 1 });
    expect(negate(fraction(0))).toStrictEqual({ numerator: 0, denominator: 1 });
  });

  it.each([
    [1, 0],
    [0.5, 1],
    [1, 1.5],
    [Number.NaN, 1],
    [LARGEST + 1, 1],
    [1, Number.POSITIVE_INFINITY],
  ])('refuses %d/%d', (numerator, denominator) => {
    expect(() => fraction(numerator, denominator)).toThrow(RangeError);
  });
});

describe('reading a decimal as it is written', () => {
  it.each([
    [47.5, 95, 2],
    [11.4, 57, 5],
    [0, 0, 1],
    [-0, 0, 1],
    [-0.5, -1, 2],
    [1.7, 17, 10],
    [1200, 1200, 1],
    [0.051, 51, 1000],
  ])('%d is %d/%d', (value, numerator, denominator) => {
    expect(decimal(value)).toStrictEqual({ numerator, denominator });
  });

  it('reads small numbers of up to nine places, which are printed with an exponent', () => {
    expect(decimal(0.0000001)).toEqual({ numerator: 1, denominator: 10_000_000 });
    expect(decimal(-0.000000025)).toEqual({ numerator: -1, denominator: 40_000_000 });
  });

  it.each([
    ['a tenth place', 0.0000000001],
    ['a sum that is not the decimal it looks like', 0.1 + 0.2],
    ['a third', 1 / 3],
    ['more digits than are held exactly', 100_000_000.12345678],
    ['a number printed with a positive exponent', 1e21],
    ['not a number', Number.NaN],
    ['infinity', Number.NEGATIVE_INFINITY],
  ])('refuses %s', (_, value) => {
    expect(() => decimal(value)).toThrow(RangeError);
  });
});

describe('a threshold met by equality', () => {
  it('13.1 s less 11.4 s is exactly 1.7 s, of which floating point falls short', () => {
    expect(13.1 - 11.4).toBeLessThan(1.7);
    expect(compare(subtract(decimal(13.1), decimal(11.4)), decimal(1.7))).toBe(0);
  });

  it('three items of 1/3 make exactly 1', () => {
    const third = fraction(1, 3);
    expect(add(third, add(third, third))).toEqual(fraction(1));
  });
});

describe('arithmetic', () => {
  it('adds, subtracts, multiplies and turns the sign', () => {
    expect(add(fraction(1, 2), fraction(1, 3))).toEqual(fraction(5, 6));
    expect(subtract(fraction(1, 2), fraction(1, 3))).toEqual(fraction(1, 6));
    expect(multiply(fraction(2, 3), fraction(3, 4))).toEqual(fraction(1, 2));
    expect(negate(fraction(1, 2))).toEqual(fraction(-1, 2));
  });

  it('gives the nearest floating-point number for display', () => {
    expect(toNumber(fraction(1, 4))).toBe(0.25);
    expect(toNumber(fraction(-1, 3))).toBe(-1 / 3);
  });

  it('adds two decimals of nine places, whose denominators share their factors', () => {
    expect(add(decimal(0.123456789), decimal(0.000000001))).toEqual(fraction(12345679, 100_000_000));
  });

  it('multiplies large parts that cancel', () => {
    expect(multiply(fraction(LARGEST, 2), fraction(2, LARGEST))).toEqual(fraction(1));
  });

  it('refuses a sum whose parts would be rounded, though the sum itself is small', () => {
    // 5 x 5404319552844595 and 3 x 9007199254740992 lie beyond 2^53 and lose their last digits.
    const a = fraction(5404319552844595, 3);
    const b = fraction(9007199254740992 - 1, 5);
    expect(() => subtract(a, b)).toThrow(RangeError);
  });
});

describe('comparing', () => {
  it('tells a difference that floating point cannot', () => {
    // 1/b is the greater excess over 1; the cross products differ by 1 at about 2^106.
    const a = fraction(LARGEST, LARGEST - 1);
    const b = fraction(LARGEST - 1, LARGEST - 2);
    expect(toNumber(a) - toNumber(b)).toBe(0);
    expect(compare(a, b)).toBeLessThan(0);
    expect(compare(b, a)).toBeGreaterThan(0);
    expect(compare(a, a)).toBe(0);
  });

  it('orders negative numbers', () => {
    expect(compare(fraction(-1, 2), fraction(-1, 3))).toBeLessThan(0);
  });
});

describe('whole multiples of a step', () => {
  it.each([
    ['3.5 of steps of 0.5', 3.5, 0.5, true],
    ['3.4 of steps of 0.5', 3.4, 0.5, false],
    ['0.3 of steps of 0.1', 0.3, 0.1, true],
    ['0 of any step', 0, 10, true],
    ['-20 of steps of 10', -20, 10, true],
    ['anything of steps of 0', 5, 0, false],
    ['0 of steps of 0', 0, 0, false],
  ])('%s', (_, value, step, expected) => {
    expect(isMultipleOf(decimal(value), decimal(step))).toBe(expected);
  });

  it('stays exact where a product would be rounded', () => {
    expect(isMultipleOf(fraction(LARGEST, 2), fraction(1, LARGEST))).toBe(false);
    expect(isMultipleOf(fraction(LARGEST), fraction(1, LARGEST))).toBe(true);
  });
});
