import { finished } from 'node:stream/promises';
import { setImmediate } from 'node:timers/promises';
import { CsvError, parse } from 'csv-parse';
import type { Options } from 'csv-parse';
import type { SheetRow } from '../domain/imports/cell.js';
import { sameTexts } from './same-texts.js';
import { FileRefused, LIMITS, refusedFile, TOO_MANY_COLUMNS, TOO_MANY_ROWS } from './table-file.js';
import type { TableFile } from './table-file.js';

const DELIMITERS = [',', ';', '\t', '|'];
/** Lines from which the delimiter is seen. */
const LINES_LOOKED_AT = 50;

/** After so many blank rows nothing follows: a spreadsheet has written out its empty ones. */
const BLANK_ROWS_AT_END = 10_000;

/** Nothing more is read. */
class EndOfTable extends Error {}

/** Reads a table from text; quoted cells may hold delimiters and line ends. Lets others work between its pieces. */
export async function readCsv(text: string): Promise<TableFile> {
  const rows: SheetRow[] = [];
  const same = sameTexts();
  let [number, blank] = [0, 0];
  try {
    await parseInPieces(text, {
      delimiter: delimiterOf(text),
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      max_record_size: LIMITS.columns * LIMITS.cellCharacters,
      onRecord: (cells: readonly string[]) => {
        number += 1;
        const row = rowOf(cells, number, same);
        blank = row === null ? blank + 1 : 0;
        if (blank > BLANK_ROWS_AT_END) throw new EndOfTable();
        if (row !== null) rows.push(row);
        if (rows.length > LIMITS.rows) throw new FileRefused(TOO_MANY_ROWS);
        return null;
      },
    });
  } catch (error) {
    if (error instanceof EndOfTable) return tableOf(rows);
    if (error instanceof FileRefused) return refusedFile(error.message);
    if (error instanceof CsvError) {
      return refusedFile(
        `The text of the table breaks off near row ${number + 1}: a quotation mark is not closed, or a row is too long.`,
      );
    }
    throw error;
  }
  return tableOf(rows);
}

const PIECE_BYTES = 256 * 1024;

/** Parses a text of which each record is taken by `onRecord`. @throws what is wrong with the text, or what that throws */
async function parseInPieces(text: string, options: Options): Promise<void> {
  const bytes = Buffer.from(text);
  const parser = parse(options);
  const ended = finished(parser.resume());
  // Told by the end of it; a failure in between is no failure of nobody.
  ended.catch(() => {});
  for (let start = 0; start < bytes.length && !parser.destroyed; start += PIECE_BYTES) {
    parser.write(bytes.subarray(start, start + PIECE_BYTES));
    await setImmediate();
  }
  parser.end();
  await ended;
}

function tableOf(rows: readonly SheetRow[]): TableFile {
  return rows.length === 0
    ? refusedFile('There is nothing in the table.')
    : { kind: 'read', sheets: [{ name: 'table', rows }] };
}

/** Null for a row with nothing in it. */
function rowOf(cells: readonly string[], number: number, same: (text: string) => string): SheetRow | null {
  let width = cells.length;
  while (width > 0 && (cells[width - 1] ?? '').trim() === '') width -= 1;
  if (width === 0) return null;
  if (width > LIMITS.columns) throw new FileRefused(TOO_MANY_COLUMNS);
  const kept = cells.slice(0, width);
  if (kept.some((cell) => cell.length > LIMITS.cellCharacters)) {
    throw new FileRefused(`Row ${number} has a cell with more than ${LIMITS.cellCharacters} characters.`);
  }
  return { number, cells: kept.map((cell) => (cell === '' ? null : same(cell))) };
}

/** The delimiter that stands in the most of the first lines, as often in each; a comma where none does. */
function delimiterOf(text: string): string {
  const lines = text
    .slice(0, 100_000)
    .split(/\r\n|\n|\r/)
    .filter((line) => line.trim() !== '')
    .slice(0, LINES_LOOKED_AT);
  const scores = DELIMITERS.map((delimiter) => {
    const counts = lines.map((line) => line.replaceAll(/"[^"]*"/g, '').split(delimiter).length - 1);
    const sorted = [...counts].sort((one, other) => one - other);
    return { delimiter, usual: sorted[Math.floor(sorted.length / 2)] ?? 0 };
  });
  return scores.reduce((best, each) => (each.usual > best.usual ? each : best)).delimiter;
}
