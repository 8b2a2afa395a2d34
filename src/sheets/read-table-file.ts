import { decodeText } from './decode-text.js';
import { readCsv } from './read-csv.js';
import { LIMITS, refusedFile } from './table-file.js';
import type { TableFile } from './table-file.js';

/** First bytes of files that are no tables, whatever their names say, with what they are. */
const OTHER_KINDS: readonly (readonly [readonly number[], string])[] = [
  [[0x89, 0x50, 0x4e, 0x47], 'a picture'],
  [[0xff, 0xd8, 0xff], 'a picture'],
  [[0x47, 0x49, 0x46, 0x38], 'a picture'],
  [[0x25, 0x50, 0x44, 0x46], 'a PDF document'],
  [[0x1f, 0x8b], 'a compressed file'],
];
/** Workbooks before XLSX, and workbooks that ask for a password, are such containers. */
const OLD_OR_LOCKED = [0xd0, 0xcf, 0x11, 0xe0];
const ZIP = [0x50, 0x4b, 0x03, 0x04];

/** Reads a file of a table. */
export type TableReader = (bytes: Uint8Array) => Promise<TableFile>;

/**
 * Reads a file of a table: CSV with any common delimiter in UTF-8, UTF-16 or Windows-1252, or an XLSX workbook.
 *
 * What the file is is seen from what stands in it, not from its name.
 *
 * @param workbookReader reads a workbook where it is one
 */
export async function readTableFile(
  bytes: Uint8Array,
  workbookReader: TableReader = readWorkbookHere,
): Promise<TableFile> {
  if (bytes.length === 0) return refusedFile('The file is empty.');
  if (bytes.length > LIMITS.fileBytes)
    return refusedFile(`The file is larger than ${LIMITS.fileBytes / 1024 / 1024} MB.`);
  const other = OTHER_KINDS.find(([start]) => startsWith(bytes, start));
  if (other !== undefined)
    return refusedFile(`This is ${other[1]}, not a table. Save the table as CSV or XLSX.`);
  if (startsWith(bytes, OLD_OR_LOCKED)) {
    return refusedFile(
      'This workbook is locked by a password, or of a kind before XLSX. Save it as XLSX or CSV without a password.',
    );
  }
  if (startsWith(bytes, ZIP)) return workbookReader(bytes);
  const text = decodeText(bytes);
  if (text === null)
    return refusedFile('This is no table: it is neither text nor a workbook. Save the table as CSV or XLSX.');
  return readCsv(text);
}

/** The reader of workbooks is large, and loaded with the first of them. */
async function readWorkbookHere(bytes: Uint8Array): Promise<TableFile> {
  const { readWorkbook } = await import('./read-workbook.js');
  return readWorkbook(bytes);
}

function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}
