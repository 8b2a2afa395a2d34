import type { Interval } from './interval.js';
import { tQuantile } from './normal-and-t.js';
import { summarise } from './summary.js';

/** Mean change of the people measured at both ends. */
export interface PairedChange {
  readonly n: number;
  readonly mean: number | null;
  /** Sample standard deviation of the changes, on n - 1. */
  readonly sd: number | null;
  /** 95 % interval of the mean change; null below two pairs. */
  readonly interval: Interval | null;
  /** Mean change over the standard deviation of the changes; null where that is 0 or absent. */
  readonly standardisedResponseMean: number | null;
}

/**
 * Mean change with its 95 % t interval, over people measured at both ends.
 *
 * @param changes discharge minus baseline, one per person with both, in one unit
 * @returns unrounded figures in that unit; no interval below two pairs, an interval of no width when all changes are equal
 * @throws RangeError when a change is not a finite number
 * @source Student. Biometrika 1908;6:1-25 (interval on n - 1 degrees of freedom).
 * @example pairedChange([1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4]) -> 1.58 (0.70 to 2.46)
 */
export function pairedChange(changes: readonly number[]): PairedChange {
  const { n, mean, sd } = summarise(changes);
  if (mean === null || sd === null) {
    return { n, mean, sd: null, interval: null, standardisedResponseMean: null };
  }
  return pairedChangeFromSummary(n, mean, sd);
}

/**
 * The same from a published number, mean and standard deviation of the changes.
 *
 * @param n number of pairs, a whole number of 1 or more
 * @param mean mean change
 * @param sd sample standard deviation of the changes, 0 or more; not used for a single pair
 * @throws RangeError when an argument is outside its range
 * @example pairedChangeFromSummary(10, 1.58, 1.2299954833) -> 0.70 to 2.46
 */
export function pairedChangeFromSummary(n: number, mean: number, sd: number): PairedChange {
  if (!Number.isSafeInteger(n) || n < 1) throw new RangeError('The number of pairs must be 1 or more.');
  if (!Number.isFinite(mean)) throw new RangeError('The mean change must be a finite number.');
  if (!Number.isFinite(sd) || sd < 0) throw new RangeError('The standard deviation must be 0 or more.');
  if (n < 2) return { n, mean, sd: null, interval: null, standardisedResponseMean: null };
  const halfWidth = sd === 0 ? 0 : (tQuantile(0.975, n - 1) * sd) / Math.sqrt(n);
  return {
    n,
    mean,
    sd,
    interval: { low: mean - halfWidth, high: mean + halfWidth },
    standardisedResponseMean: sd === 0 ? null : mean / sd,
  };
}
