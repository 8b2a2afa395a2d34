import { RECORD_TABLES } from '../../domain/exports/record-tables.js';
import type { RecordTable, StoredRow } from '../../domain/exports/record-table.js';
import { sha256 } from '../../sheets/digest.js';
import { writeExactCsv } from '../../sheets/write-csv.js';
import { faultOfFile } from './open-record-file.js';
import type { RecordFault, RecordFile } from './open-record-file.js';
import { bytesFile, RECORD_FILE_FORM, RECORD_FILE_VERSION, tableFile } from './record-form.js';
import type { TableAbout } from './record-form.js';

/** No JSON form of a record is larger: it is held in memory whole. */
const MOST_BYTES = 128 * 1024 * 1024;

/** Whether a file is a JSON document rather than a zip. */
export function looksLikeJson(bytes: Uint8Array): boolean {
  return /^\uFEFF?\s*\{/.test(Buffer.from(bytes.subarray(0, 64)).toString('utf8'));
}

/**
 * Opens the JSON form of a record: its tables as those of the zip, so that they are checked and stored by the same rules.
 *
 * The zip has digests by which damage is found; of the JSON form only what the rules do not allow is.
 */
export function openRecordJson(bytes: Uint8Array): RecordFile | { readonly faults: readonly RecordFault[] } {
  if (bytes.length > MOST_BYTES)
    return {
      faults: [faultOfFile(`The file cannot be used: it is larger than ${MOST_BYTES / 1024 / 1024} MB.`)],
    };
  const read = parsed(bytes);
  if (!isObject(read))
    return { faults: [faultOfFile('The file cannot be used: it is no whole JSON document.')] };
  const { form, version, exportedAt, team, tables } = read;
  if (
    form !== RECORD_FILE_FORM ||
    typeof exportedAt !== 'string' ||
    typeof team !== 'string' ||
    !isObject(tables)
  )
    return { faults: [faultOfFile('It does not say that this is the record of a team.')] };
  if (version !== RECORD_FILE_VERSION) {
    const message = `The record is of another form: this program reads version ${RECORD_FILE_VERSION}.`;
    return { faults: [faultOfFile(message)] };
  }
  const files = new Map<string, Uint8Array>();
  const told: TableAbout[] = [];
  const faults: RecordFault[] = [];
  for (const table of RECORD_TABLES) {
    const rows = rowsOf(table, tables[table.name]);
    if ('message' in rows) faults.push(rows);
    else told.push(addTable(files, table, rows.rows));
  }
  if (faults.length > 0) return { faults };
  return { about: { form, version, exportedAt, team, tables: told }, files };
}

/** A fault of a table of the zip as one of the JSON form: its rows have no headings above them. */
export function faultInJson(fault: RecordFault): RecordFault {
  const withoutEnding = (text: string): string => text.replace(/\.csv$/, '');
  return {
    ...fault,
    file: fault.file === null ? null : withoutEnding(fault.file),
    row: fault.row === null ? null : Math.max(1, fault.row - 1),
    message: withoutEnding(fault.message),
  };
}

function addTable(
  files: Map<string, Uint8Array>,
  table: RecordTable,
  rows: readonly StoredRow[],
): TableAbout {
  const lines = rows.map((row) =>
    table.columns.map(({ name, kind }) => {
      const value = row[name] ?? null;
      if (kind.type !== 'file' || typeof value !== 'string')
        return value instanceof Uint8Array ? null : value;
      const file = bytesFile(table, row);
      files.set(file, Buffer.from(value, 'base64'));
      return file;
    }),
  );
  const content = Buffer.from(
    writeExactCsv([table.columns.map(({ name }) => name)], true) + writeExactCsv(lines, false),
  );
  const file = tableFile(table);
  files.set(file, content);
  return { table: table.name, file, rows: rows.length, digest: sha256(content) };
}

function rowsOf(table: RecordTable, value: unknown): { readonly rows: readonly StoredRow[] } | RecordFault {
  const fault = (row: number | null, message: string): RecordFault => ({
    file: tableFile(table),
    row,
    column: null,
    message,
  });
  if (!Array.isArray(value)) return fault(null, 'The table is missing.');
  const rows: StoredRow[] = [];
  for (const [index, row] of value.entries()) {
    if (!isRow(table, row))
      return fault(index + 2, 'must have the columns of the table, each a text, a number or null');
    rows.push(row);
  }
  return { rows };
}

function isRow({ columns }: RecordTable, value: unknown): value is StoredRow {
  return (
    isObject(value) &&
    Object.keys(value).length === columns.length &&
    columns.every(({ name }) => {
      const cell = value[name];
      return (
        cell === null || typeof cell === 'string' || (typeof cell === 'number' && Number.isSafeInteger(cell))
      );
    })
  );
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function parsed(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(
      Buffer.from(bytes)
        .toString('utf8')
        .replace(/^\uFEFF/, ''),
    );
  } catch {
    return null;
  }
}
