import { Readable } from 'node:stream';
import { CsvError, parse } from 'csv-parse';
import { FileRefused } from './table-file.js';
import { unguardCell } from './write-csv.js';

const CHUNK_BYTES = 256 * 1024;
/** Longer than any row of a record: a release stands in one cell. */
const LONGEST_ROW_CHARACTERS = 32 * 1024 * 1024;

/**
 * Reads what `writeExactCsv` wrote, a row at a time, so that a large table need not be in memory: an empty text as '',
 * nothing as null, guards taken off.
 *
 * @throws FileRefused in words when the text is no such table
 */
export async function* readExactCsv(bytes: Uint8Array): AsyncGenerator<readonly (string | null)[]> {
  const parser = parse({
    bom: true,
    record_delimiter: '\r\n',
    encoding: 'utf8',
    relax_column_count: true,
    max_record_size: LONGEST_ROW_CHARACTERS,
    cast: (value, { quoting }) => (value === '' && !quoting ? null : unguardCell(value)),
  });
  Readable.from(chunksOf(bytes)).pipe(parser);
  let row = 0;
  try {
    for await (const cells of parser) {
      row += 1;
      yield cells as (string | null)[];
    }
  } catch (error) {
    if (error instanceof CsvError) throw new FileRefused(`the table breaks off after row ${row}`);
    throw error;
  } finally {
    parser.destroy();
  }
}

function* chunksOf(bytes: Uint8Array): Generator<Uint8Array> {
  for (let start = 0; start < bytes.length; start += CHUNK_BYTES) {
    yield bytes.subarray(start, start + CHUNK_BYTES);
  }
}
