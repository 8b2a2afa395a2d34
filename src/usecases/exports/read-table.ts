import { readCell } from '../../domain/exports/read-cell.js';
import type { RecordColumn, RecordTable, StoredRow, StoredValue } from '../../domain/exports/record-table.js';
import type { NhsNumberRange } from '../../domain/identity/nhs-number.js';
import { readExactCsv } from '../../sheets/read-exact-csv.js';
import { FileRefused } from '../../sheets/table-file.js';
import type { RecordFault, RecordFile } from './open-record-file.js';
import { tableFile } from './record-form.js';

/** A row of a table with its number in the file, and what is wrong with it. */
export interface TableRow {
  readonly number: number;
  readonly row: StoredRow;
  readonly faults: readonly RecordFault[];
}

/** Reads the rows of a table one at a time, each cell by what its column holds. */
export async function* readTable(
  { files }: RecordFile,
  table: RecordTable,
  range: NhsNumberRange,
): AsyncGenerator<TableRow> {
  const file = tableFile(table);
  const fault = (number: number, column: string | null, message: string): RecordFault => ({
    file,
    row: number,
    column,
    message,
  });
  let number = 0;
  try {
    for await (const cells of readExactCsv(files.get(file) ?? new Uint8Array())) {
      number += 1;
      if (number === 1) {
        if (hasHeadings(table, cells)) continue;
        yield { number, row: {}, faults: [fault(1, null, 'must be the names of the columns, in order')] };
        return;
      }
      if (cells.length !== table.columns.length) {
        yield {
          number,
          row: {},
          faults: [fault(number, null, `must have ${table.columns.length} cells`)],
        };
        continue;
      }
      const faults: RecordFault[] = [];
      const row: Record<string, StoredValue> = {};
      for (const [index, column] of table.columns.entries()) {
        const read = valueOf(column, cells[index] ?? null, range, files);
        if ('message' in read) faults.push(fault(number, column.name, read.message));
        else row[column.name] = read.value;
      }
      yield { number, row, faults };
    }
    if (number === 0)
      yield { number: 1, row: {}, faults: [fault(1, null, 'is missing: the names of the columns')] };
  } catch (error) {
    if (!(error instanceof FileRefused)) throw error;
    yield { number, row: {}, faults: [fault(number, null, error.message)] };
  }
}

function hasHeadings({ columns }: RecordTable, cells: readonly (string | null)[]): boolean {
  return cells.length === columns.length && columns.every(({ name }, index) => cells[index] === name);
}

function valueOf(
  column: RecordColumn,
  cell: string | null,
  range: NhsNumberRange,
  files: RecordFile['files'],
): { readonly value: StoredValue } | { readonly message: string } {
  const read = readCell(column, cell, range);
  if (read.kind === 'fault') return read;
  if (column.kind.type !== 'file' || typeof read.value !== 'string') return read;
  const content = files.get(read.value);
  return content === undefined ? { message: 'must name a file beside the tables' } : { value: content };
}
