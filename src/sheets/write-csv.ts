import { stringify } from 'csv-stringify/sync';

/** Cells that a spreadsheet would carry out as a formula begin with one of these. */
const FORMULA_START = /^[=+\-@\t\r]/;
/** A number, negative ones included, is no formula. */
const NUMBER = /^[+-]?\d+(?:\.\d+)?$/;

/** A cell of text that a spreadsheet shows and does not carry out. @example guardCell('=1+1') -> "'=1+1"; guardCell('-3.5') -> '-3.5' */
export function guardCell(text: string): string {
  return FORMULA_START.test(text) && !NUMBER.test(text) ? `'${text}` : text;
}

/** A table as CSV with a byte order mark, so that spreadsheets read it as UTF-8. */
export function writeCsv(rows: readonly (readonly (string | number | null)[])[]): string {
  const guarded = rows.map((row) => row.map((cell) => (typeof cell === 'string' ? guardCell(cell) : cell)));
  return stringify(guarded, { bom: true, record_delimiter: 'windows' });
}
