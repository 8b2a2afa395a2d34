import type { Interval } from './interval.js';
import { wilsonInterval } from './proportion.js';

/** Share who achieved a change that matters, with what the people not measured could make of it. Proportions 0 to 1. */
export interface ResponderBounds {
  readonly achieved: number;
  readonly measured: number;
  readonly eligible: number;
  /** Achieved of those measured at both ends; null when nobody was. */
  readonly completeCase: number | null;
  /** 95 % Wilson interval of the complete case proportion; null when nobody was measured. */
  readonly interval: Interval | null;
  /** Achieved of all eligible, as if nobody unmeasured had achieved; null when nobody was eligible. */
  readonly worst: number | null;
  /** Achieved of all eligible, as if everybody unmeasured had achieved; null when nobody was eligible. */
  readonly best: number | null;
  /** Measured of all eligible; null when nobody was eligible. */
  readonly measuredShare: number | null;
  /** Whether fewer than 70 % of the eligible were measured, so that words must say so beside the figure. */
  readonly fewMeasured: boolean;
}

/**
 * Proportion who achieved a change that matters, between its worst and its best bound.
 *
 * Missing measurements cannot flatter: the figure of those measured never stands without the two bounds.
 *
 * @param input whole numbers of people: `achieved` among those `measured` at both ends, `measured` among those `eligible`
 * @returns the complete case proportion with its interval, the bounds and the measured share
 * @throws RangeError when a count is negative or not whole, or exceeds the count it is part of
 * @source Bounds: identification region in the sense of Manski (from memory); the 70 % rule is our own, no source.
 * @example responderBounds({ achieved: 62, measured: 88, eligible: 120 }) -> 0.705 (0.602 to 0.790), worst 0.517, best 0.783
 */
export function responderBounds(input: {
  readonly achieved: number;
  readonly measured: number;
  readonly eligible: number;
}): ResponderBounds {
  const { achieved, measured, eligible } = input;
  if (!Number.isSafeInteger(eligible) || measured > eligible) {
    throw new RangeError(`Not a count out of a count: ${measured}/${eligible}`);
  }
  const interval = wilsonInterval(achieved, measured);
  const unmeasured = eligible - measured;
  return {
    achieved,
    measured,
    eligible,
    completeCase: share(achieved, measured),
    interval,
    worst: share(achieved, eligible),
    best: share(achieved + unmeasured, eligible),
    measuredShare: share(measured, eligible),
    fewMeasured: measured * 10 < eligible * 7,
  };
}

function share(numerator: number, denominator: number): number | null {
  return denominator === 0 ? null : numerator / denominator;
}
