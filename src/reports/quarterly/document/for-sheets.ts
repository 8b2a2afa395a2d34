import type { Cell, Column } from '../../../documents/document-model.js';
import type { Summary } from '../../../domain/statistics/summary.js';
import { interval, number } from './cells.js';

/** Columns for the middle of some values. */
export function middleColumns(name: string): readonly Column[] {
  return [
    { head: `${name}, median`, kind: 'number', isForSheetsOnly: true },
    { head: `${name}, quartiles`, kind: 'interval', isForSheetsOnly: true },
  ];
}

/** The cells of those columns. */
export function middleCells(
  { median, lowerQuartile: low, upperQuartile: high }: Summary,
  places: number,
): readonly Cell[] {
  return [number(median, places), interval(low === null || high === null ? null : { low, high }, places)];
}
