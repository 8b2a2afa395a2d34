import { LEFT_BEHIND } from '../../domain/exports/record-tables.js';
import { dictionaryText } from '../../domain/exports/dictionary.js';
import type { RecordTable, StoredRow } from '../../domain/exports/record-table.js';

/** The name by which a file says that it is the record of a team, and the version of its form. */
export const RECORD_FILE_FORM = 'tidemark-record';
export const RECORD_FILE_VERSION = 1;

export const ABOUT_FILE = 'about.json';
export const DICTIONARY_FILE = 'data-dictionary.csv';
export const READ_ME_FILE = 'read-me.txt';

/** What a record that leaves is of, and when it left. */
export interface RecordHead {
  readonly teamName: string;
  /** UTC. */
  readonly exportedAt: string;
}

/** Gives the rows of one table, some at a time. */
export type RowSource = (table: RecordTable) => AsyncIterable<readonly StoredRow[]>;

/** What the zip of a record says of itself. */
export interface RecordAbout {
  readonly form: typeof RECORD_FILE_FORM;
  readonly version: number;
  readonly exportedAt: string;
  readonly team: string;
  readonly tables: readonly TableAbout[];
}

/** One table of it: how many rows, and the digest of its file, by which damage is found. */
export interface TableAbout {
  readonly table: string;
  readonly file: string;
  readonly rows: number;
  /** SHA-256, hexadecimal. */
  readonly digest: string;
}

/** Name of the file that a table stands in. */
export function tableFile({ name }: RecordTable): string {
  return `${name}.csv`;
}

/** Name of the file that holds the bytes of a row. @example 'release_file/12-pdf' */
export function bytesFile({ name, key }: RecordTable, row: StoredRow): string {
  return `${name}/${key.map((column) => String(row[column])).join('-')}`;
}

/** What somebody reads who opens the zip first. */
export function readMe(tables: readonly RecordTable[]): string {
  const behind = Object.entries(LEFT_BEHIND).map(([name, why]) => `  - ${name}: ${why}`);
  return [
    'THE WHOLE RECORD OF A TEAM',
    '',
    'These files name people and hold what was measured of them. Keep them as you keep the record itself:',
    'encrypted, for as long as they are needed, and with nobody who may not see the record.',
    '',
    'One CSV file is one table: UTF-8, commas, the names of the columns in the first row. Nothing stands for "not',
    'recorded"; an empty text stands in quotation marks. Dates are YYYY-MM-DD, instants UTC. Text that a',
    'spreadsheet would carry out as a formula has an apostrophe before it; numbers are never changed.',
    'about.json says when the record was taken out, how many rows each table has, and the digest of each file.',
    'data-dictionary.csv says of each column its type, unit, codes and meaning; the same follows here.',
    '',
    'The zip as it is can be brought into a store without the team by: npm run import -- --record FILE. A file that',
    'was changed is refused. People are invited again there: nothing by which anybody signs in is in here.',
    '',
    'What stays behind:',
    ...behind,
    '',
    'THE TABLES',
    '',
    dictionaryText(tables),
  ].join('\r\n');
}
