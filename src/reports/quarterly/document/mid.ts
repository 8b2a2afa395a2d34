import type { Interval } from '../../../domain/statistics/interval.js';
import type { MeasureOutcomes } from '../report-model.js';

/**
 * The one minimal important difference by which a measure was judged, in its unit and without a sign.
 *
 * @returns null where there is none, or where people were judged by several
 */
export function midOf({ thresholds }: Pick<MeasureOutcomes, 'thresholds'>): number | null {
  const values = new Set(
    thresholds.filter(({ purpose }) => purpose === 'improvement').map(({ value }) => Math.abs(value)),
  );
  const [only] = values;
  return values.size === 1 && only !== undefined && only > 0 ? only : null;
}

/** A mean change with its interval as improvement in multiples of the MID, better upwards. */
export function perMid(
  { betterWhen }: MeasureOutcomes,
  mid: number,
  mean: number,
  ends: Interval | null,
): { readonly value: number; readonly interval: Interval | null } {
  const sign = betterWhen === 'higher' ? 1 : -1;
  const scaled = (value: number): number => (sign * value) / mid;
  if (ends === null) return { value: scaled(mean), interval: null };
  const [one, other] = [scaled(ends.low), scaled(ends.high)];
  return { value: scaled(mean), interval: { low: Math.min(one, other), high: Math.max(one, other) } };
}
