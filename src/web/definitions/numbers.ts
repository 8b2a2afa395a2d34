import { toNumber } from '../../domain/exact/fraction.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import { withUnit } from '../../domain/measures/shown-value.js';

const MOST_PLACES = 4;
const MINUS = '\u2212';

/** An exact value as a reader sees it, rounded only where it has no end. @example numberWords(fraction(24, 7)) -> '3.4286' */
export function numberWords(value: Fraction): string {
  return String(Number(toNumber(value).toFixed(MOST_PLACES))).replace('-', MINUS);
}

/** An exact value with its unit as one says it. @example sizeWords(fraction(1, 2), 'mean item score') -> '0.5 per item' */
export function sizeWords(value: Fraction, unit: string): string {
  return withUnit(numberWords(value), unit);
}

/** A formula as it is set: true signs of minus and multiplication. @example formulaWords('361 - 4 x age') -> '361 − 4 × age' */
export function formulaWords(formula: string): string {
  return formula.replaceAll(' - ', ` ${MINUS} `).replaceAll(' x ', ' \u00d7 ');
}

/** Both ends of a range with its unit. @example '0 to 1020 m' */
export function rangeWords(range: { readonly min: Fraction; readonly max: Fraction }, unit: string): string {
  return withUnit(`${numberWords(range.min)} to ${numberWords(range.max)}`, unit);
}
