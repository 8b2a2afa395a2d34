// Source: Newcombe RG. Two-sided confidence intervals for the single proportion: comparison of seven methods.
// Statist Med 1998;17:857-872, Table I, method 3 (Wilson score without continuity correction).
// The printed limits were read as several public test suites quote them; the paper was opened at its summary only.
// Tolerance of a printed limit: half a unit of its fourth decimal. The longer values were computed once from the formula
// in double precision, apart from the code under test, and hold to 1e-10.
import { describe, expect, it } from 'vitest';
import { wilsonInterval } from '../../src/domain/statistics/proportion.js';

const PRINTED = 0.00005;
const COMPUTED = 1e-10;

function expectWithin(actual: number | undefined, expected: number, tolerance: number): void {
  expect(Math.abs((actual ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);
}

describe('Wilson intervals printed in Newcombe 1998', () => {
  it.each([
    { k: 81, n: 263, low: 0.2553, high: 0.3662 },
    { k: 15, n: 148, low: 0.0624, high: 0.1605 },
    { k: 0, n: 20, low: 0, high: 0.1611 },
    { k: 1, n: 29, low: 0.0061, high: 0.1718 },
  ])('$k of $n is $low to $high', ({ k, n, low, high }) => {
    const interval = wilsonInterval(k, n);
    expectWithin(interval?.low, low, PRINTED);
    expectWithin(interval?.high, high, PRINTED);
  });
});

describe('the same intervals, computed to ten decimals', () => {
  it.each([
    { k: 81, n: 263, low: 0.255288519878, high: 0.366209576983 },
    { k: 0, n: 20, low: 0, high: 0.161125158053 },
    { k: 1, n: 29, low: 0.006113214293, high: 0.171755218793 },
    { k: 20, n: 20, low: 0.838874841947, high: 1 },
  ])('$k of $n', ({ k, n, low, high }) => {
    const interval = wilsonInterval(k, n);
    expectWithin(interval?.low, low, COMPUTED);
    expectWithin(interval?.high, high, COMPUTED);
  });

  it('0 of n ends at z^2 / (n + z^2), worked from the formula by hand', () => {
    // z^2 = 3.841458820694124; 5 + z^2 = 8.841458820694124.
    expectWithin(wilsonInterval(0, 5)?.high, 3.841458820694124 / 8.841458820694124, 1e-14);
    expectWithin(wilsonInterval(5, 5)?.low, 5 / 8.841458820694124, 1e-14);
  });
});
