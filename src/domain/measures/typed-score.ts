import type { Fraction } from '../exact/fraction.js';
import { add, compare, decimal, fraction, multiply, subtract, toNumber } from '../exact/fraction.js';
import { acceptedValues } from './accepted-values.js';
import type { Measure } from './measure.js';

/** Why a typed value is none of the measure. */
export type TypedScoreFault = 'not-a-number' | 'out-of-range' | 'off-the-grid' | 'ambiguous';

/** A typed value read exactly, or refused with words that say what is accepted. */
export type TypedScore =
  | { readonly kind: 'read'; readonly value: Fraction }
  | { readonly kind: 'refused'; readonly fault: TypedScoreFault; readonly message: string };

const MOST_DECIMALS = 9;

/**
 * Reads a typed value of a measure as the exact value it stands for.
 *
 * A mean over items is usually typed rounded: 3.43 is the mean 24/7 of seven items, and no other mean rounds to it.
 *
 * @param measure the measure with its limits and step
 * @param value as typed, in the unit of the measure; 0 is a value like any other
 * @returns the exact value; refused outside the limits, off the steps, or where a rounded mean could be two values
 * @example readTypedScore(CRQ emotional function, 3.43) -> 24/7; readTypedScore(CAT total, 40.5) -> off the grid
 */
export function readTypedScore(measure: Measure, value: number): TypedScore {
  const { min, max, step } = measure.range;
  if (!Number.isFinite(value)) return refuse(measure, 'not-a-number', value);
  if (value < toNumber(min) || value > toNumber(max)) return refuse(measure, 'out-of-range', value);
  const places = decimalPlaces(value);
  if (places === null || places > MOST_DECIMALS) return refuse(measure, 'off-the-grid', value);
  const typed = decimal(value);
  if (step === null || isWholeSteps(subtract(typed, min), step)) return { kind: 'read', value: typed };
  if (measure.unit !== 'mean item score') return refuse(measure, 'off-the-grid', value);
  const [only, ...others] = meansRoundingTo(typed, places, min, step);
  if (only === undefined) return refuse(measure, 'off-the-grid', value);
  return others.length === 0 ? { kind: 'read', value: only } : refuse(measure, 'ambiguous', value);
}

/** Grid values that give the typed number when rounded half up to its number of decimals. */
function meansRoundingTo(
  typed: Fraction,
  places: number,
  min: Fraction,
  step: Fraction,
): readonly Fraction[] {
  const half = fraction(1, 2 * 10 ** places);
  const [low, high] = [subtract(typed, half), add(typed, half)];
  const found: Fraction[] = [];
  let steps = Math.ceil(toNumber(subtract(low, min)) / toNumber(step)) - 1;
  for (let value = valueAt(min, step, steps); compare(value, high) < 0; value = valueAt(min, step, steps)) {
    if (compare(value, low) >= 0 && compare(value, min) >= 0) found.push(value);
    steps += 1;
  }
  return found;
}

function valueAt(min: Fraction, step: Fraction, steps: number): Fraction {
  return add(min, multiply(step, fraction(steps)));
}

function isWholeSteps(distance: Fraction, step: Fraction): boolean {
  return multiply(distance, fraction(step.denominator, step.numerator)).denominator === 1;
}

function decimalPlaces(value: number): number | null {
  const match = /^-?\d+(?:\.(\d+))?$/.exec(String(value));
  return match === null ? null : (match[1] ?? '').length;
}

function refuse(measure: Measure, fault: TypedScoreFault, value: number): TypedScore {
  const accepted = `${measure.name} takes ${acceptedValues(measure)}`;
  const message =
    fault === 'ambiguous'
      ? `${accepted}; ${value} could be more than one of them: give more decimals.`
      : `${accepted}; you gave ${value}.`;
  return { kind: 'refused', fault, message };
}
