import { Unzip, UnzipInflate } from 'fflate';
import readWorkbookFile from 'read-excel-file/node';
import { parsePlainDate } from '../domain/calendar/plain-date.js';
import type { Cell, SheetRow } from '../domain/imports/cell.js';
import { FileRefused, LIMITS, refusedFile, TOO_MANY_COLUMNS, TOO_MANY_ROWS } from './table-file.js';
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
    file.ondata = (error, chunk) => {
      if (error !== null) throw error instanceof FileRefused ? error : new FileRefused(NO_WORKBOOK);
      unpacked += chunk.length;
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
