import { stringify } from 'csv-stringify/sync';

/** Cells that a spreadsheet would carry out as a formula begin with one of these; quotation marks before it are the guard's. */
const FORMULA_START = /^'*[=+\-@\t\r\n]/;
/** A number, negative ones included, is no formula. */
const NUMBER = /^[+-]?\d+(?:\.\d+)?$/;

/** A cell of text that a spreadsheet shows and does not carry out. @example guardCell('=1+1') -> "'=1+1"; guardCell('-3.5') -> '-3.5' */
export function guardCell(text: string): string {
  return needsGuard(text) ? `'${text}` : text;
}

/** The text that was guarded, exactly. @example unguardCell("'=1+1") -> '=1+1'; unguardCell("it's") -> "it's" */
export function unguardCell(cell: string): string {
  return cell.startsWith("'") && needsGuard(cell.slice(1)) ? cell.slice(1) : cell;
}

/** Text that already looks guarded is guarded too, so that taking the guard off gives back what was there. */
function needsGuard(text: string): boolean {
  return FORMULA_START.test(text) && !NUMBER.test(text);
}

/** A table as CSV with a byte order mark, so that spreadsheets read it as UTF-8. */
export function writeCsv(rows: readonly (readonly (string | number | null)[])[]): string {
  return stringify(rows.map(guarded), { bom: true, record_delimiter: 'windows' });
}

/**
 * Rows as CSV from which every value comes back as it was: an empty text stands in quotation marks, nothing does not.
 *
 * @param isFirst the rows begin the file
 */
export function writeExactCsv(
  rows: readonly (readonly (string | number | null)[])[],
  isFirst: boolean,
): string {
  return stringify(rows.map(guarded), {
    bom: isFirst,
    record_delimiter: 'windows',
    quoted_match: EMPTY_OR_LINES,
  });
}

const EMPTY_OR_LINES = /^$|[\r\n]|^\s|\s$/;

function guarded(row: readonly (string | number | null)[]): readonly (string | number | null)[] {
  return row.map((cell) => (typeof cell === 'string' ? guardCell(cell) : cell));
}
