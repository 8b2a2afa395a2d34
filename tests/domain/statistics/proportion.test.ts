import { describe, expect, it } from 'vitest';
import { newcombeDifference, wilsonInterval } from '../../../src/domain/statistics/proportion.js';

describe('interval of a proportion', () => {
  it('declines where nobody is in the denominator', () => {
    expect(wilsonInterval(0, 0)).toBeNull();
  });

  it.each([1, 3, 7, 20, 49, 400, 1_000_000])(
    '0 of %d starts at exactly 0, all of them end at exactly 1',
    (n) => {
      expect(wilsonInterval(0, n)?.low).toBe(0);
      expect(wilsonInterval(n, n)?.high).toBe(1);
    },
  );

  it('of nobody who achieved is not a certain 0', () => {
    expect(wilsonInterval(0, 3)?.high).toBeGreaterThan(0.5);
  });

  it.each([
    [-1, 5],
    [6, 5],
    [1, 0],
    [1.5, 5],
    [1, 5.5],
    [0, -1],
    [Number.NaN, 5],
    [1, Number.POSITIVE_INFINITY],
  ])('refuses %d of %d', (numerator, denominator) => {
    expect(() => wilsonInterval(numerator, denominator)).toThrow(RangeError);
  });
});

describe('interval of a difference', () => {
  it('declines where either group is empty', () => {
    expect(newcombeDifference({ numerator: 1, denominator: 2 }, { numerator: 0, denominator: 0 })).toBeNull();
    expect(newcombeDifference({ numerator: 0, denominator: 0 }, { numerator: 1, denominator: 2 })).toBeNull();
  });

  it('is exact where floating point would not be: 0.8 less 0.6 is 0.2', () => {
    expect(56 / 70 - 48 / 80).not.toBe(0.2);
    const result = newcombeDifference({ numerator: 56, denominator: 70 }, { numerator: 48, denominator: 80 });
    expect(result?.difference).toBe(0.2);
  });

  it('refuses counts that are none', () => {
    const good = { numerator: 1, denominator: 2 };
    expect(() => newcombeDifference({ numerator: 3, denominator: 2 }, good)).toThrow(RangeError);
    expect(() => newcombeDifference(good, { numerator: 0.5, denominator: 2 })).toThrow(RangeError);
  });
});
