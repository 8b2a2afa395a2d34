import type { Citation } from '../evidence/citation.js';
import type { Fraction } from '../exact/fraction.js';
import { decimal } from '../exact/fraction.js';
import type { MeasureRange } from './measure.js';

/**
 * Writes the limits of a measure from plain decimals.
 *
 * @param min smallest value accepted, in the unit of the measure
 * @param max largest value accepted
 * @param step distance between two neighbouring values; a fraction where no decimal holds it, such as 1/7
 * @param citation where the limits come from
 * @throws RangeError when a number has more than 9 decimal places
 * @example range(0, 1020, 10, source) -> 0 to 1020 in steps of 10
 */
export function range(min: number, max: number, step: number | Fraction, citation: Citation): MeasureRange {
  return {
    min: decimal(min),
    max: decimal(max),
    step: typeof step === 'number' ? decimal(step) : step,
    citation,
  };
}

/** The values that need no confirmation, from plain decimals. @example usual(20, 800) -> 20 to 800 */
export function usual(min: number, max: number): { readonly min: Fraction; readonly max: Fraction } {
  return { min: decimal(min), max: decimal(max) };
}

/** A published range or confidence interval, from plain decimals. @example interval(38.6, 56.5) */
export function interval(low: number, high: number): { readonly low: Fraction; readonly high: Fraction } {
  return { low: decimal(low), high: decimal(high) };
}

/** A figure or rule that is remembered and was read nowhere. @example fromMemory('licence-cat', 'Terms as remembered') */
export function fromMemory(id: string, text: string): Citation {
  return { id, text, doi: null, status: 'from-memory' };
}
