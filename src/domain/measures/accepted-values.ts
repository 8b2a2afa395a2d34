import type { Fraction } from '../exact/fraction.js';
import { toNumber } from '../exact/fraction.js';
import type { Measure } from './measure.js';

/**
 * The values that may be typed for a measure, in words.
 *
 * @example acceptedValues(incremental shuttle walk distance) -> 'multiples of 10 from 0 to 1020 m'
 */
export function acceptedValues(measure: Measure): string {
  const { min, max, step } = measure.range;
  const span = `from ${show(min)} to ${show(max)}${physicalUnit(measure)}`;
  if (step === null) return `numbers ${span}`;
  if (measure.unit === 'mean item score') {
    return `means of ${step.denominator} items ${span}, in steps of ${show(step)}, exact or rounded to two decimals`;
  }
  if (show(step) === '1') return `whole numbers ${span}`;
  return step.denominator === 1 ? `multiples of ${show(step)} ${span}` : `steps of ${show(step)} ${span}`;
}

/** A fraction for readers: as a decimal where that is exact, else as 24/7. @example show(95/2) -> '47.5' */
export function show(value: Fraction): string {
  const decimals = toNumber(value);
  const isExact = value.denominator === 1 || /^(2*5*)*$/.test(primeFactors(value.denominator));
  return isExact ? String(decimals) : `${value.numerator}/${value.denominator}`;
}

/**
 * A unit that stands after a number, with its space; empty where the numbers are scores.
 *
 * @example physicalUnit(incremental shuttle walk distance) -> ' m'
 */
export function physicalUnit(measure: Measure): string {
  switch (measure.unit) {
    case 'points':
    case 'grade':
    case 'utility':
    case 'mean item score':
      return '';
    case 'repetitions':
    case 'm':
    case 's':
    case 'm/s':
    case 'kg':
    case 'kgf':
    case 'N.m':
      return ` ${measure.unit}`;
  }
}

function primeFactors(value: number): string {
  let rest = value;
  let factors = '';
  for (let prime = 2; rest > 1; prime += 1) {
    while (rest % prime === 0) {
      factors += String(prime);
      rest /= prime;
    }
  }
  return factors;
}
