import { Unzip, UnzipInflate } from 'fflate';
import readWorkbookFile from 'read-excel-file/node';
import { parsePlainDate } from '../domain/calendar/plain-date.js';
import type { Cell, SheetRow } from '../domain/imports/cell.js';
import {
  FileRefused,
  LIMITS,
  REACHES_TOO_FAR,
  refusedFile,
  TOO_MANY_COLUMNS,
  TOO_MANY_ROWS,
} from './table-file.js';
import type { Sheet, TableFile } from './table-file.js';

const NO_WORKBOOK = 'This is no workbook that can be read. Save the table as XLSX or CSV.';

/** Reads an XLSX workbook; of formulas the values that the spreadsheet has stored. */
export async function readWorkbook(bytes: Uint8Array): Promise<TableFile> {
  try {
    requireModest(bytes);
    const sheets = await readWorkbookFile(Buffer.from(bytes));
    const read = sheets
      .map(({ sheet, data }): Sheet => ({ name: sheet, rows: rowsOf(data) }))
      .filter(({ rows }) => rows.length > 0);
    return read.length === 0
      ? refusedFile('There is nothing in the workbook.')
      : { kind: 'read', sheets: read };
  } catch (error) {
    // Whatever is wrong with the inside of such a file, the reader of it finds it in his own words.
    return refusedFile(error instanceof FileRefused ? error.message : NO_WORKBOOK);
  }
}

const CHUNK_BYTES = 64 * 1024;

/**
 * Unpacks a workbook without keeping anything, and stops where it grows beyond what a sheet of a team can be.
 *
 * @throws FileRefused when it is too large unpacked, has too many parts, or is no workbook
 */
function requireModest(bytes: Uint8Array): void {
  let [unpacked, parts, isWorkbook] = [0, 0, false];
  const unzip = new Unzip((file) => {
    parts += 1;
    if (parts > LIMITS.parts) throw new FileRefused(NO_WORKBOOK);
    if (file.name === 'xl/workbook.xml') isWorkbook = true;
    const extent = /^xl\/worksheets\/[^/]+\.xml$/.test(file.name) ? extentWatch() : null;
    file.ondata = (error, chunk, isLast) => {
      if (error !== null) throw error instanceof FileRefused ? error : new FileRefused(NO_WORKBOOK);
      unpacked += chunk.length;
      extent?.(chunk, isLast);
      if (unpacked > LIMITS.unpackedBytes) {
        throw new FileRefused(
          'The workbook unpacks to more than a sheet of a team can be. Save the one sheet as CSV, and send that.',
        );
      }
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  for (let start = 0; start < bytes.length; start += CHUNK_BYTES) {
    const end = Math.min(start + CHUNK_BYTES, bytes.length);
    unzip.push(bytes.subarray(start, end), end === bytes.length);
  }
  if (!isWorkbook) throw new FileRefused(NO_WORKBOOK);
}

/** Cells up to which a sheet is read, blank ones within it counted: it is held in memory as a whole. */
const MOST_CELLS = 8_000_000;
/** A tag of a sheet is far shorter. */
const LONGEST_TAG_CHARACTERS = 64 * 1024;

/**
 * Watches how far a sheet reaches while it is unpacked: a few bytes can say that it has a cell in its last corner, and the
 * reader makes room for every cell up to there.
 *
 * @throws FileRefused when it reaches too far, or has too many rows, blank ones included
 */
function extentWatch(): (chunk: Uint8Array, isLast: boolean) => void {
  let [rest, rows, lastRow, lastColumn] = ['', 0, 0, 0];
  return (chunk, isLast) => {
    const text = rest + Buffer.from(chunk).toString('latin1');
    const end = isLast || text.length > LONGEST_TAG_CHARACTERS * 2 ? text.length : text.lastIndexOf('<');
    rest = text.slice(Math.max(0, end));
    for (const [, row, column, number] of text
      .slice(0, Math.max(0, end))
      .matchAll(/<(?:\w+:)?(?:(row)\b|c\b[^<>]*?\sr="([A-Z]{1,3})(\d{1,7})")/g)) {
      if (row !== undefined) rows += 1;
      lastRow = Math.max(lastRow, Number(number ?? 0));
      lastColumn = Math.max(lastColumn, columnNumber(column ?? ''));
    }
    if (rows > LIMITS.rows) throw new FileRefused(TOO_MANY_ROWS);
    if (lastRow > LIMITS.rows || lastRow * lastColumn > MOST_CELLS) throw new FileRefused(REACHES_TOO_FAR);
  };
}

/** @example columnNumber('A') -> 1, columnNumber('AB') -> 28 */
function columnNumber(letters: string): number {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

function rowsOf(data: readonly (readonly unknown[])[]): readonly SheetRow[] {
  const rows: SheetRow[] = [];
  data.forEach((values, index) => {
    const cells = values.map(cellOf);
    let width = cells.length;
    while (width > 0 && cells[width - 1] === null) width -= 1;
    if (width === 0) return;
    if (width > LIMITS.columns) throw new FileRefused(TOO_MANY_COLUMNS);
    rows.push({ number: index + 1, cells: cells.slice(0, width) });
    if (rows.length > LIMITS.rows) throw new FileRefused(TOO_MANY_ROWS);
  });
  return rows;
}

function cellOf(read: unknown): Cell {
  if (typeof read === 'boolean' || typeof read === 'number') return read;
  if (typeof read === 'string') return read.trim() === '' ? null : read;
  return read !== null && typeof read === 'object' && 'toISOString' in read ? dateCell(read) : null;
}

/** A date of a workbook has no zone: its day is that of its UTC instant. */
function dateCell(read: { readonly toISOString: unknown }): Cell {
  const iso: unknown = JSON.parse(JSON.stringify(read));
  const date = typeof iso === 'string' ? parsePlainDate(iso.slice(0, 10)) : null;
  return date === null ? null : { date };
}
