import type { PlainDate } from '../calendar/plain-date.js';

/** What stands in one cell of a sheet: text, a number, yes or no, a date that the spreadsheet knows as one, or nothing. */
export type Cell = string | number | boolean | { readonly date: PlainDate } | null;

/** One row of a sheet with its number as the spreadsheet counts, from 1. */
export interface SheetRow {
  readonly number: number;
  readonly cells: readonly Cell[];
}

/** What a cell was read as: a value, nothing, or something that is not taken, with what is wrong in words. */
export type Reading<Value> =
  | { readonly kind: 'value'; readonly value: Value }
  | { readonly kind: 'blank' }
  | { readonly kind: 'wrong'; readonly message: string };

export const BLANK = { kind: 'blank' } as const;

/** A reading that succeeded. */
export function value<Value>(read: Value): Reading<Value> {
  return { kind: 'value', value: read };
}

/** A reading that failed, with what would be right. */
export function wrong(message: string): { readonly kind: 'wrong'; readonly message: string } {
  return { kind: 'wrong', message };
}

/** What stands in a cell, as a person sees it. @example cellText({ date: '2026-03-31' }) -> '31/03/2026' */
export function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  if (typeof cell !== 'object') return String(cell).trim();
  const [year = '', month = '', day = ''] = cell.date.split('-');
  return `${day}/${month}/${year}`;
}

/** Words and signs by which teams say that there is nothing (common practice, no source). */
const NOTHING = new Set([
  '',
  '-',
  '--',
  '–',
  '—',
  '.',
  'n/a',
  'na',
  '#n/a',
  'null',
  'none',
  'missing',
  'not recorded',
  'dna',
]);
/** Words by which they say that it is not known. */
const NOT_KNOWN = new Set(['n/k', 'nk', 'not known', 'unknown', 'unk', '?', 'not sure', 'dk']);

/** Whether a cell says that there is nothing, in whatever words; "not known" included. */
export function saysNothing(cell: Cell): boolean {
  const text = cellText(cell).toLowerCase();
  return NOTHING.has(text) || NOT_KNOWN.has(text);
}

/** Whether a cell says in words that something is not known: a value of its own where a code has one. */
export function saysNotKnown(cell: Cell): boolean {
  return NOT_KNOWN.has(cellText(cell).toLowerCase());
}
