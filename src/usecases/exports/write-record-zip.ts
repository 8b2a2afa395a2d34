import { DICTIONARY_HEADINGS, dictionaryRows } from '../../domain/exports/dictionary.js';
import type { RecordTable, StoredRow } from '../../domain/exports/record-table.js';
import { sha256Of } from '../../sheets/digest.js';
import { writeCsv, writeExactCsv } from '../../sheets/write-csv.js';
import { zipWriter } from '../../sheets/zip.js';
import type { ZipWriter } from '../../sheets/zip.js';
import {
  ABOUT_FILE,
  bytesFile,
  DICTIONARY_FILE,
  READ_ME_FILE,
  readMe,
  RECORD_FILE_FORM,
  RECORD_FILE_VERSION,
  tableFile,
} from './record-form.js';
import type { RecordAbout, RecordHead, RowSource, TableAbout } from './record-form.js';

/** Writes a record as a zip of CSV files. The same record gives the same bytes, but for the instant in `about.json`. */
export async function writeRecordZip(
  head: RecordHead,
  tables: readonly RecordTable[],
  rowsOf: RowSource,
): Promise<Uint8Array> {
  const zip = zipWriter();
  zip.begin(READ_ME_FILE)(readMe(tables));
  zip.begin(DICTIONARY_FILE)(writeCsv([DICTIONARY_HEADINGS, ...dictionaryRows(tables)]));
  const written: TableAbout[] = [];
  for (const table of tables) written.push(await writeTable(zip, table, rowsOf));
  const about: RecordAbout = {
    form: RECORD_FILE_FORM,
    version: RECORD_FILE_VERSION,
    exportedAt: head.exportedAt,
    team: head.teamName,
    tables: written,
  };
  zip.begin(ABOUT_FILE)(`${JSON.stringify(about, null, 2)}\n`);
  return zip.end();
}

async function writeTable(zip: ZipWriter, table: RecordTable, rowsOf: RowSource): Promise<TableAbout> {
  const names = table.columns.map(({ name }) => name);
  const file = tableFile(table);
  const digest = sha256Of();
  const files: (readonly [string, Uint8Array])[] = [];
  const add = zip.begin(file);
  const write = (text: string): void => {
    digest.add(text);
    add(text);
  };
  write(writeExactCsv([names], true));
  let rows = 0;
  for await (const batch of rowsOf(table)) {
    rows += batch.length;
    const cells = batch.map((row) => names.map((name) => cellOf(table, row, name, files)));
    write(writeExactCsv(cells, false));
  }
  for (const [name, content] of files) zip.begin(name)(content);
  return { table: table.name, file, rows, digest: digest.end() };
}

/** Bytes go into a file of their own, which the cell names. */
function cellOf(
  table: RecordTable,
  row: StoredRow,
  name: string,
  files: (readonly [string, Uint8Array])[],
): string | number | null {
  const value = row[name] ?? null;
  if (value === null || typeof value === 'string' || typeof value === 'number') return value;
  const file = bytesFile(table, row);
  files.push([file, value]);
  return file;
}
