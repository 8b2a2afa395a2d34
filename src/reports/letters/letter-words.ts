import type { MeasureOutcome } from '../outcomes/outcomes-model.js';

/**
 * A value as letters print it: at most two decimals, none that say nothing.
 *
 * @example shown(24 / 7) -> '3.43'
 * @example shown(320) -> '320'
 */
export function shown(value: number): string {
  const size = Math.round(Math.abs(value) * 100 + Number.EPSILON * 100) / 100;
  return size === 0 ? '0' : `${value < 0 ? '-' : ''}${size}`;
}

/** A change with its sign. @example signed(50) -> '+50' */
export function signed(value: number): string {
  const text = shown(value);
  return value > 0 && text !== '0' ? `+${text}` : text;
}

/** A unit that stands behind a number, with its space; empty where the numbers are scores. */
export function unitOf(measure: Pick<MeasureOutcome, 'unit'>): string {
  const isScore = ['points', 'grade', 'utility', 'mean item score'].includes(measure.unit);
  return isScore ? '' : ` ${measure.unit}`;
}

/** An NHS number in its three groups. @example groupedNhsNumber('9990000018') -> '999 000 0018' */
export function groupedNhsNumber(nhsNumber: string): string {
  return `${nhsNumber.slice(0, 3)} ${nhsNumber.slice(3, 6)} ${nhsNumber.slice(6)}`;
}
