/** The middle of some numbers, with the least and the greatest. */
export interface Spread {
  readonly median: number;
  readonly least: number;
  readonly greatest: number;
}

/** @throws RangeError when there is no number */
export function spreadOf(values: readonly number[]): Spread {
  return { median: quantileOf(values, 0.5), least: quantileOf(values, 0), greatest: quantileOf(values, 1) };
}

/**
 * A quantile of some numbers, between two neighbours in proportion.
 *
 * @param share 0 to 1
 * @throws RangeError when there is no number
 */
export function quantileOf(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const [below, above] = [sorted[Math.floor(place)], sorted[Math.ceil(place)]];
  if (below === undefined || above === undefined) throw new RangeError('No number, no quantile.');
  return below + (above - below) * (place - Math.floor(place));
}
