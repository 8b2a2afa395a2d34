import { expect } from 'vitest';

/*
 * People constructed so that their number, means and standard deviations are those of a published cohort. A cohort is a
 * short table of groups of people alike, so that its sums can be checked by hand; nothing here uses the product.
 */

/** People alike: how many, their baseline, and discharge minus baseline, in the unit of the measure. */
export type Group = readonly [people: number, baseline: number, change: number];

/** One person's two results. */
export interface Ends {
  readonly baseline: number;
  readonly discharge: number;
}

/** The people of a table, one by one, in its order. Decimals are kept to six places: the sums of floats are not. */
export function peopleOf(groups: readonly Group[]): readonly Ends[] {
  return groups.flatMap(([people, baseline, change]) =>
    Array.from({ length: people }, () => ({ baseline, discharge: Number((baseline + change).toFixed(6)) })),
  );
}

/** How many, their mean and their standard deviation on n - 1, by the textbook formula in two passes. */
export function momentsOf(values: readonly number[]): { n: number; mean: number; sd: number } {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { n, mean, sd: Math.sqrt(squares / (n - 1)) };
}

/** The moments of both ends and of the change of a table. */
export function momentsOfGroups(groups: readonly Group[]) {
  const people = peopleOf(groups);
  return {
    baseline: momentsOf(people.map(({ baseline }) => baseline)),
    discharge: momentsOf(people.map(({ discharge }) => discharge)),
    change: momentsOf(groups.flatMap(([count, , change]) => Array<number>(count).fill(change))),
  };
}

/**
 * Holds a figure to a printed one: it would be printed the same.
 *
 * @param printed as a text, so that the places are those of the source: `0.60` is within half a hundredth
 */
export function expectPrinted(actual: number | null | undefined, printed: string): void {
  const places = printed.split('.')[1]?.length ?? 0;
  const halfUnit = 0.5 * 10 ** -places + 1e-9;
  expect(actual, `${String(actual)} is not printed as ${printed}`).not.toBeNull();
  expect(
    Math.abs((actual ?? Number.NaN) - Number(printed)),
    `${String(actual)}, printed ${printed}`,
  ).toBeLessThanOrEqual(halfUnit);
}

/** Holds a figure to one worked by hand, with the tolerance that the rounding of its inputs leaves. */
export function expectWithin(actual: number | null | undefined, expected: number, tolerance: number): void {
  expect(
    Math.abs((actual ?? Number.NaN) - expected),
    `${String(actual)}, by hand ${expected}`,
  ).toBeLessThanOrEqual(tolerance);
}

/** Half the width of an interval. */
export function halfWidth(interval: { readonly low: number; readonly high: number } | null): number {
  return interval === null ? Number.NaN : (interval.high - interval.low) / 2;
}
