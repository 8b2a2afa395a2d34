// Source: Newcombe RG. Interval estimation for the difference between independent proportions: comparison of eleven
// methods. Statist Med 1998;17:873-890, Table II, examples (a) to (h), method 10 (hybrid score, no continuity correction).
// The printed limits were read as several public test suites quote them; the paper was opened at its abstract only.
// Tolerance of a printed limit: half a unit of its fourth decimal, widened by 1e-6 for limits that fall on the half.
// The longer values were computed once from the formula in double precision, apart from the code under test.
import { describe, expect, it } from 'vitest';
import { newcombeDifference } from '../../src/domain/statistics/proportion.js';

const PRINTED = 0.000051;
const COMPUTED = 1e-10;

function difference(
  counts: readonly [number, number, number, number],
): ReturnType<typeof newcombeDifference> {
  const [numeratorA, denominatorA, numeratorB, denominatorB] = counts;
  return newcombeDifference(
    { numerator: numeratorA, denominator: denominatorA },
    { numerator: numeratorB, denominator: denominatorB },
  );
}

function expectWithin(actual: number | undefined, expected: number, tolerance: number): void {
  expect(Math.abs((actual ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);
}

describe('differences printed in Newcombe 1998, Table II', () => {
  it.each([
    { example: 'a', counts: [56, 70, 48, 80], low: 0.0524, high: 0.3339 },
    { example: 'b', counts: [9, 10, 3, 10], low: 0.1705, high: 0.809 },
    { example: 'c', counts: [6, 7, 2, 7], low: 0.0582, high: 0.8062 },
    { example: 'd', counts: [5, 56, 0, 29], low: -0.0381, high: 0.1926 },
    { example: 'e', counts: [0, 10, 0, 20], low: -0.1611, high: 0.2775 },
    { example: 'f', counts: [0, 10, 0, 10], low: -0.2775, high: 0.2775 },
    { example: 'g', counts: [10, 10, 0, 20], low: 0.6791, high: 1 },
    { example: 'h', counts: [10, 10, 0, 10], low: 0.6075, high: 1 },
  ] as const)('example ($example)', ({ counts, low, high }) => {
    const result = difference(counts);
    expectWithin(result?.low, low, PRINTED);
    expectWithin(result?.high, high, PRINTED);
  });
});

describe('the same differences, computed to ten decimals', () => {
  it.each([
    { counts: [56, 70, 48, 80], expected: 0.2, low: 0.052431472402, high: 0.333872654037 },
    { counts: [6, 7, 2, 7], expected: 0.571428571429, low: 0.058227927482, high: 0.806249637524 },
    { counts: [0, 10, 0, 20], expected: 0, low: -0.161125158053, high: 0.277532799863 },
    { counts: [0, 10, 0, 10], expected: 0, low: -0.277532799863, high: 0.277532799863 },
    { counts: [10, 10, 0, 20], expected: 1, low: 0.679086037142, high: 1 },
  ] as const)('$counts', ({ counts, expected, low, high }) => {
    const result = difference(counts);
    expectWithin(result?.difference, expected, COMPUTED);
    expectWithin(result?.low, low, COMPUTED);
    expectWithin(result?.high, high, COMPUTED);
  });
});
