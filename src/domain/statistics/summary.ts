import { mean, quantileSorted, sampleStandardDeviation } from 'simple-statistics';

/** What is said of a set of values; every figure is null where there are too few values for it. */
export interface Summary {
  readonly n: number;
  readonly mean: number | null;
  /** Sample standard deviation, on n - 1. */
  readonly sd: number | null;
  readonly median: number | null;
  readonly lowerQuartile: number | null;
  readonly upperQuartile: number | null;
}

/**
 * Number, mean, standard deviation, median and quartiles of a set of values.
 *
 * @param values finite numbers in one unit, in any order; missing ones are left out by the caller, 0 is a value
 * @returns unrounded figures in that unit; the standard deviation is null below two values, all are null for none
 * @throws RangeError when a value is not a finite number
 * @source Quartiles: Hyndman RJ, Fan Y. Am Stat 1996;50:361-365, type 7.
 * @example summarise([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]) -> median 5.5, quartiles 3.25 and 7.75
 */
export function summarise(values: readonly number[]): Summary {
  if (!values.every(Number.isFinite))
    throw new RangeError('A value to be summarised is not a finite number.');
  const sorted = [...values].sort((a, b) => a - b);
  const n = sorted.length;
  const lowest = sorted[0];
  if (lowest === undefined) {
    return { n, mean: null, sd: null, median: null, lowerQuartile: null, upperQuartile: null };
  }
  // Equal values spread by nothing; computed, the mean's rounding would leave a trace that a standardised size divides by.
  const allEqual = lowest === sorted[n - 1];
  return {
    n,
    mean: allEqual ? lowest : mean(sorted),
    sd: n < 2 ? null : allEqual ? 0 : sampleStandardDeviation(sorted),
    median: quantileSorted(sorted, 0.5),
    lowerQuartile: quantileSorted(sorted, 0.25),
    upperQuartile: quantileSorted(sorted, 0.75),
  };
}
