import type { Interval } from './interval.js';
import { tQuantile } from './normal-and-t.js';

/** Number, mean and standard deviation of one group, as `summarise` and `pairedChange` give them. */
export interface MeanOfGroup {
  readonly n: number;
  readonly mean: number | null;
  /** Sample standard deviation, on n - 1. */
  readonly sd: number | null;
}

/** Difference of the means of two independent groups. */
export interface DifferenceOfMeans {
  readonly difference: number;
  /** 95 % interval of the difference. */
  readonly interval: Interval;
  readonly degreesOfFreedom: number;
}

/**
 * Difference of two independent means with its 95 % interval, the two spreads not taken to be alike.
 *
 * For the mean change of one quarter against that of another: other people in each. Not for two ends of the same people.
 *
 * @param a the first group
 * @param b the second group, in the same unit
 * @returns first less second, unrounded; null where either group has fewer than two values, or neither spreads at all
 * @source Welch BL. Biometrika 1947;34:28-35; degrees of freedom by Satterthwaite (formulas from memory, proved in the
 *   tests against printed output of R).
 * @example welchDifference({ n: 10, mean: 0.75, sd: 1.78901 }, { n: 10, mean: 2.33, sd: 2.00225 }) -> -1.58 (-3.37 to 0.21)
 */
export function welchDifference(a: MeanOfGroup, b: MeanOfGroup): DifferenceOfMeans | null {
  if (a.n < 2 || b.n < 2 || a.mean === null || b.mean === null || a.sd === null || b.sd === null) return null;
  const [varianceA, varianceB] = [(a.sd * a.sd) / a.n, (b.sd * b.sd) / b.n];
  const variance = varianceA + varianceB;
  if (variance === 0) return null;
  const degreesOfFreedom =
    (variance * variance) / ((varianceA * varianceA) / (a.n - 1) + (varianceB * varianceB) / (b.n - 1));
  const difference = a.mean - b.mean;
  const halfWidth = tQuantile(0.975, degreesOfFreedom) * Math.sqrt(variance);
  return {
    difference,
    interval: { low: difference - halfWidth, high: difference + halfWidth },
    degreesOfFreedom,
  };
}
