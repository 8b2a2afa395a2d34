import type { Fraction } from '../exact/fraction.js';
import { compare, fraction, multiply } from '../exact/fraction.js';
import { physicalUnit, show } from './accepted-values.js';
import type { Measure, Threshold } from './measure.js';

/** What a threshold asks for on the steps of its measure. */
export interface ReachedChange {
  /** Smallest size of change that reaches the threshold; null where the source gives a range only. */
  readonly change: Fraction | null;
  /** Whether that change is the threshold itself. */
  readonly isExact: boolean;
  readonly words: string;
}

/**
 * What a threshold amounts to on the grid of its measure, because a change can only be a whole number of steps.
 *
 * @param measure the measure with its step
 * @param threshold one of its thresholds
 * @returns the smallest change that is at least the threshold, and a sentence for readers
 * @example smallestChangeReaching(incremental shuttle walk distance, 47.5 m) -> 50 m, not exact
 * @example smallestChangeReaching(CRQ dyspnoea, 0.5) -> 3/5, a summed gain of 3 over 5 items
 */
export function smallestChangeReaching(measure: Measure, threshold: Threshold): ReachedChange {
  const { value, interval } = threshold;
  const { step } = measure.range;
  if (value === null) {
    const span = interval === null ? '' : ` (${show(interval.low)} to ${show(interval.high)})`;
    return {
      change: null,
      isExact: false,
      words: `Published as a range only${span}: no change is judged by it.`,
    };
  }
  const change = step === null ? value : roundedUpTo(value, step);
  const isExact = compare(change, value) === 0;
  return { change, isExact, words: inWords(measure, value, change, isExact) };
}

function inWords(measure: Measure, value: Fraction, change: Fraction, isExact: boolean): string {
  const { step } = measure.range;
  if (measure.unit === 'mean item score' && step !== null) {
    const items = step.denominator;
    const sum = multiply(change, fraction(items));
    return `${show(value)} per item means a summed change of at least ${show(sum)} over ${items} items.`;
  }
  const least = `at least ${show(change)}${unitAfter(measure, change)}`;
  if (isExact || step === null) return `${least.replace('at', 'At')}.`;
  const stepWords = `${show(step)}${unitAfter(measure, step)}`;
  return `${show(value)}${unitAfter(measure, value)} means ${least}, because it moves in steps of ${stepWords}.`;
}

function unitAfter(measure: Measure, amount: Fraction): string {
  const plural = compare(amount, fraction(1)) === 0 ? '' : 's';
  switch (measure.unit) {
    case 'grade':
      return ` grade${plural}`;
    case 'points':
      return ` point${plural}`;
    case 'repetitions':
      return ` repetition${plural}`;
    case 'utility':
    case 'mean item score':
    case 'm':
    case 's':
    case 'm/s':
    case 'kg':
    case 'kgf':
    case 'N.m':
      return physicalUnit(measure);
  }
}

function roundedUpTo(value: Fraction, step: Fraction): Fraction {
  const steps = multiply(value, fraction(step.denominator, step.numerator));
  return multiply(step, fraction(Math.ceil(steps.numerator / steps.denominator)));
}
