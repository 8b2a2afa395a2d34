import type { Interval } from './interval.js';

/** Limits within which a proportion varies by chance about a target, for one denominator. Proportions 0 to 1. */
export interface FunnelLimits {
  readonly target: number;
  readonly denominator: number;
  /** 95 % of what chance gives lies within. */
  readonly inner: Interval;
  /** 99.8 % of it. */
  readonly outer: Interval;
}

/** Fewer sites than this are shown with intervals and without a funnel. */
export const LEAST_SITES_FOR_FUNNEL = 5;

/** What chance gives beyond each end of the inner, and of the outer limits. */
const INNER_TAIL = 0.025;
const OUTER_TAIL = 0.001;

/**
 * Exact binomial limits of a funnel plot, interpolated between the counts they fall between.
 *
 * They lie about half an event low at both ends, as published; who lies outside is told by {@link placeInFunnel}. They say
 * where to look; they rank nothing.
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
    target,
    denominator,
    inner: { low: limitAt(INNER_TAIL), high: limitAt(1 - INNER_TAIL) },
    outer: { low: limitAt(OUTER_TAIL), high: limitAt(1 - OUTER_TAIL) },
  };
}

/**
 * Where a count stands to its funnel. It is beyond a limit that it lies strictly outside of where chance, too, gives so few,
 * or so many, less often than the limit says: the upper limits lie low, and 30 of 30 would be beyond 99.8 % about 90 %,
 * where chance gives that in 4 of 100.
 *
 * @param numerator a whole number up to the denominator of the limits
 * @example placeInFunnel(90, funnelLimits(0.7, 100)) -> 'beyond-outer'
 */
export function placeInFunnel(
  numerator: number,
  limits: FunnelLimits,
): 'within' | 'beyond-inner' | 'beyond-outer' {
  const { target, denominator, inner, outer } = limits;
  const share = numerator / denominator;
  const isBeyond = ({ low, high }: Interval, tail: number): boolean => {
    if (share >= low && share <= high) return false;
    const [from, to] = share < low ? [0, numerator] : [numerator, denominator];
    return chanceOf(target, denominator, from, to) < tail;
  };
  if (isBeyond(outer, OUTER_TAIL)) return 'beyond-outer';
  return isBeyond(inner, INNER_TAIL) ? 'beyond-inner' : 'within';
}

/** How often chance gives one of these counts. */
function chanceOf(target: number, trials: number, from: number, to: number): number {
  let sum = 0;
  for (const [count, chance] of binomial(target, trials)) if (count >= from && count <= to) sum += chance;
  return sum;
}

/** The count at which the cumulative binomial passes a probability, less the part of it that lies beyond. */
function interpolatedQuantile(target: number, trials: number, probability: number): number {
  if (target === 0) return 0;
  let cumulative = 0;
  for (const [count, chance] of binomial(target, trials)) {
    cumulative += chance;
    if (target < 1 && cumulative > probability) {
      return Math.max(0, count - (cumulative - probability) / chance);
    }
  }
  return trials;
}

/** Each count with the chance of it. */
function* binomial(target: number, trials: number): Generator<readonly [count: number, chance: number]> {
  if (target === 0 || target === 1) {
    yield [target * trials, 1];
    return;
  }
  const logOdds = Math.log(target) - Math.log1p(-target);
  // In logarithms, because the first term underflows above about a thousand trials.
  let logChance = trials * Math.log1p(-target);
  for (let count = 0; count <= trials; count += 1) {
    if (count > 0) logChance += Math.log((trials - count + 1) / count) + logOdds;
    yield [count, Math.exp(logChance)];
  }
}
