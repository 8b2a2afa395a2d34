import type { Cell, Column } from '../../../documents/document-model.js';
import type { Figure } from '../../../domain/indicators/figure.js';
import type { Summary } from '../../../domain/statistics/summary.js';
import { interval, number, percentage } from './cells.js';

/*
 * Columns that sheets have beyond what people read, so that a spreadsheet leaves out no number of the report.
 */

/** Columns for the share of a figure. */
export function shareColumns(name: string): readonly Column[] {
  return [
    { head: `${name}, %`, kind: 'number', isForSheetsOnly: true },
    { head: `${name}, 95 % interval`, kind: 'interval', isForSheetsOnly: true },
  ];
}

/** The cells of those columns; nothing where there is no such figure. */
export function shareCells(figure: Figure | null): readonly Cell[] {
  return figure === null
    ? [number(null, 1), interval(null, 1)]
    : [percentage(figure), interval(figure.interval, 1)];
}

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
