import type { Fraction } from '../exact/fraction.js';
import { compare } from '../exact/fraction.js';
import type { Measure } from './measure.js';

/**
 * Whether a value is possible but so unusual that the person who enters it must confirm it.
 *
 * @param measure the measure with its check range; without one nothing needs confirming
 * @param value exact value within the limits of the measure
 * @returns true outside the check range; both ends are ordinary
 * @source Check ranges are common practice, no publication
 * @example needsConfirmation(incremental shuttle walk distance, 810) -> true
 */
export function needsConfirmation(measure: Measure, value: Fraction): boolean {
  const { checkRange } = measure;
  if (checkRange === null) return false;
  return compare(value, checkRange.min) < 0 || compare(value, checkRange.max) > 0;
}
