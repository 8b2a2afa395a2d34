import type { Fraction } from '../exact/fraction.js';
import { compare, fraction } from '../exact/fraction.js';
import type { BandSet, Measure } from './measure.js';

/**
 * The label of the band in which a score lies.
 *
 * A score with filled items may lie between two whole numbers: it belongs to the band whose next one it has not reached.
 *
 * @param bandSet bands in rising order without gaps
 * @param value exact score
 * @returns the label; null outside all bands
 * @example bandOf(HADS three bands, 15/2) -> 'normal', because 8 is not reached
 */
export function bandOf(bandSet: BandSet, value: Fraction): string | null {
  const last = bandSet.bands.at(-1);
  if (last === undefined || compare(value, fraction(last.to)) > 0) return null;
  return bandSet.bands.findLast((band) => compare(value, fraction(band.from)) >= 0)?.label ?? null;
}

/** The band set that is used where none is chosen; undefined for a measure without bands. */
export function defaultBands(measure: Measure): BandSet | undefined {
  return measure.bands.find((bandSet) => bandSet.isDefault);
}
