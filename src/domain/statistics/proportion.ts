import type { Interval } from './interval.js';
import { Z_95 } from './normal-and-t.js';

/** So many of so many, as counts; a rounded percentage is never a basis for a limit. */
export interface Proportion {
  readonly numerator: number;
  readonly denominator: number;
}

/**
 * 95 % Wilson score interval of a proportion, without continuity correction.
 *
 * @param numerator how many of the denominator count, a whole number
 * @param denominator out of how many, a whole number
 * @returns limits as proportions 0 to 1 (0 of n starts at exactly 0, n of n ends at exactly 1), or null when the denominator is 0
 * @throws RangeError when a count is negative or not whole, or the numerator exceeds the denominator
 * @source Newcombe RG. Statist Med 1998;17:857-872, method 3.
 * @example wilsonInterval(81, 263) -> 0.2553 to 0.3662
 */
export function wilsonInterval(numerator: number, denominator: number): Interval | null {
  requireCounts(numerator, denominator);
  if (denominator === 0) return null;
  const share = numerator / denominator;
  const spread = (Z_95 * Z_95) / denominator;
  const centre = share + spread / 2;
  const halfWidth = Z_95 * Math.sqrt((share * (1 - share)) / denominator + spread / (4 * denominator));
  return {
    low: numerator === 0 ? 0 : Math.max(0, (centre - halfWidth) / (1 + spread)),
    high: numerator === denominator ? 1 : Math.min(1, (centre + halfWidth) / (1 + spread)),
  };
}

/**
 * 95 % interval of the difference of two independent proportions (one year and another, one site and another), by
 * the hybrid score method. Not for the same people measured twice.
 *
 * @param a counts of the first group
 * @param b counts of the second group
 * @returns first less second with its limits, -1 to 1, or null when either denominator is 0
 * @throws RangeError when a count is negative or not whole, or a numerator exceeds its denominator
 * @source Newcombe RG. Statist Med 1998;17:873-890, method 10.
 * @example newcombeDifference({ numerator: 56, denominator: 70 }, { numerator: 48, denominator: 80 }) -> 0.2 (0.0524 to 0.3339)
 */
export function newcombeDifference(
  a: Proportion,
  b: Proportion,
): { readonly difference: number; readonly low: number; readonly high: number } | null {
  const intervalA = wilsonInterval(a.numerator, a.denominator);
  const intervalB = wilsonInterval(b.numerator, b.denominator);
  if (intervalA === null || intervalB === null) return null;
  const shareA = a.numerator / a.denominator;
  const shareB = b.numerator / b.denominator;
  const crossProducts = a.numerator * b.denominator - b.numerator * a.denominator;
  const difference = crossProducts / (a.denominator * b.denominator);
  const below = rootOfSquares(shareA - intervalA.low, intervalB.high - shareB);
  const above = rootOfSquares(intervalA.high - shareA, shareB - intervalB.low);
  return { difference, low: Math.max(-1, difference - below), high: Math.min(1, difference + above) };
}

function rootOfSquares(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}

function requireCounts(numerator: number, denominator: number): void {
  const areCounts = Number.isSafeInteger(numerator) && Number.isSafeInteger(denominator);
  if (!areCounts || numerator < 0 || numerator > denominator) {
    throw new RangeError(`Not a count out of a count: ${numerator}/${denominator}`);
  }
}
