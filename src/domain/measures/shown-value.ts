import { UNIT_SPACE } from '../text/unit-space.js';

const MINUS = '\u2212';
/** Places beyond those of the measure that a change may be given to stay on its side of a threshold. */
const MOST_MORE_PLACES = 3;

/**
 * Decimal places in which a value of a measure is shown: those in which it may be typed. A score that was made up for
 * missing items has more, which say nothing; it is stored and compared exactly all the same.
 *
 * @param unit as the measure names it
 * @example placesFor('points') -> 1
 */
export function placesFor(unit: string): number {
  if (unit === 'utility') return 3;
  return unit === 'mean item score' || unit === 'm/s' ? 2 : 1;
}

/**
 * A value of a measure as it is read: rounded once, without decimals that say nothing.
 *
 * @example shownValue(21.333333, 'points') -> '21.3'
 * @example shownValue(24 / 7, 'mean item score') -> '3.43'
 */
export function shownValue(value: number, unit: string): string {
  return written(value, placesFor(unit));
}

/**
 * A change with its sign. It gets as many places as keep it on its side of each threshold: one that does not reach a
 * threshold is never rounded onto it.
 *
 * @param thresholds sizes of change that judge it, in its unit
 * @example shownChange(-1.857142, 'points', [2]) -> '−1.9'
 * @example shownChange(3.96, 'points', [4]) -> '+3.96'
 */
export function shownChange(change: number, unit: string, thresholds: readonly number[]): string {
  const size = Math.abs(change);
  const isTrue = (places: number): boolean =>
    thresholds.every((threshold) => size >= threshold === Number(size.toFixed(places)) >= threshold);
  const fewest = placesFor(unit);
  const more = Array.from({ length: MOST_MORE_PLACES }, (_, index) => fewest + index);
  const text = written(change, more.find(isTrue) ?? fewest + MOST_MORE_PLACES);
  return text === '0' || change < 0 ? text : `+${text}`;
}

/**
 * A number that was written already, with its unit as one says it.
 *
 * @example withUnit('−1', 'grade') -> '−1 grade'
 * @example withUnit('+0.5', 'mean item score') -> '+0.5 per item'
 */
export function withUnit(number: string, unit: string): string {
  const isOne = /^[+\u2212]?1$/.test(number);
  switch (unit) {
    case 'utility':
      return number;
    case 'mean item score':
      return `${number}${UNIT_SPACE}per item`;
    case 'grade':
      return `${number}${UNIT_SPACE}${isOne ? 'grade' : 'grades'}`;
    case 'points':
      return `${number}${UNIT_SPACE}${isOne ? 'point' : 'points'}`;
    case 'repetitions':
      return `${number}${UNIT_SPACE}${isOne ? 'repetition' : 'repetitions'}`;
    default:
      return `${number}${UNIT_SPACE}${unit.replace('.', '\u00b7')}`;
  }
}

/**
 * A change in words, with its sign and unit.
 *
 * @example changeWords(0, 'grade', [1]) -> 'no change'
 * @example changeWords(-1, 'grade', [1]) -> '−1 grade'
 */
export function changeWords(change: number, unit: string, thresholds: readonly number[]): string {
  const shown = shownChange(change, unit, thresholds);
  return shown === '0' ? 'no change' : withUnit(shown, unit);
}

function written(value: number, places: number): string {
  const size = String(Number(Math.abs(value).toFixed(places)));
  return value < 0 && size !== '0' ? `${MINUS}${size}` : size;
}
