import type { Interval } from './interval.js';

/** Limits within which a proportion varies by chance about a target, for one denominator. Proportions 0 to 1. */
export interface FunnelLimits {
  readonly denominator: number;
  /** 95 % of what chance gives lies within. */
  readonly inner: Interval;
  /** 99.8 % of it. */
  readonly outer: Interval;
}

/** Fewer sites than this are shown with intervals and without a funnel. */
export const LEAST_SITES_FOR_FUNNEL = 5;

const INNER = [0.025, 0.975] as const;
const OUTER = [0.001, 0.999] as const;

/**
 * Exact binomial limits of a funnel plot, interpolated between the counts they fall between.
 *
 * They lie about half an event low at both ends, as published, so that only what is strictly outside is named; above, of few
 * people, chance gives what lies outside somewhat more often than the limit says, so that of fewer than 30 nothing is
 * claimed. They say where to look; they rank nothing.
 *
 * @param target 0 to 1: the pooled proportion of all sites, or a stated standard
 * @param denominator a whole number of 1 or more
 * @throws RangeError when an argument is outside its range
 * @source Spiegelhalter DJ. Statist Med 2005;24:1185-1202, appendix (interpolation from memory).
 * @example funnelLimits(0.7, 100).inner -> 0.603 to 0.783
 */
export function funnelLimits(target: number, denominator: number): FunnelLimits {
  if (!(target >= 0 && target <= 1)) throw new RangeError('The target must lie between 0 and 1.');
  if (!Number.isSafeInteger(denominator) || denominator < 1) {
    throw new RangeError('The denominator must be 1 or more.');
  }
  const limitAt = (tail: number): number => interpolatedQuantile(target, denominator, tail) / denominator;
  return {
    denominator,
    inner: { low: limitAt(INNER[0]), high: limitAt(INNER[1]) },
    outer: { low: limitAt(OUTER[0]), high: limitAt(OUTER[1]) },
  };
}

/** Where a proportion stands to its funnel. @example placeInFunnel(0.5, limits) -> 'beyond-inner' */
export function placeInFunnel(
  share: number,
  { inner, outer }: FunnelLimits,
): 'within' | 'beyond-inner' | 'beyond-outer' {
  if (share < outer.low || share > outer.high) return 'beyond-outer';
  return share < inner.low || share > inner.high ? 'beyond-inner' : 'within';
}

/** The count at which the cumulative binomial passes a probability, less the part of it that lies beyond. */
function interpolatedQuantile(target: number, trials: number, probability: number): number {
  if (target === 0) return 0;
  if (target === 1) return trials;
  const logOdds = Math.log(target) - Math.log1p(-target);
  // In logarithms, because the first term underflows above about a thousand trials.
  let logTerm = trials * Math.log1p(-target);
  let cumulative = 0;
  for (let count = 0; count <= trials; count += 1) {
    if (count > 0) logTerm += Math.log((trials - count + 1) / count) + logOdds;
    const term = Math.exp(logTerm);
    cumulative += term;
    if (cumulative > probability) return Math.max(0, count - (cumulative - probability) / term);
  }
  return trials;
}
