import { toNumber } from '../../domain/exact/fraction.js';
import type { Fraction } from '../../domain/exact/fraction.js';

const MOST_PLACES = 4;

/** An exact value as a reader sees it, rounded only where it has no end. @example numberWords(fraction(24, 7)) -> '3.4286' */
export function numberWords(value: Fraction): string {
  return String(Number(toNumber(value).toFixed(MOST_PLACES)));
}

/** Both ends of a range with its unit. @example '0 to 1020 m' */
export function rangeWords(range: { readonly min: Fraction; readonly max: Fraction }, unit: string): string {
  return `${numberWords(range.min)} to ${numberWords(range.max)} ${unit}`;
}
