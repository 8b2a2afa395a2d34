import { RECORD_TABLES } from '../../domain/exports/record-tables.js';
import type { RecordTable } from '../../domain/exports/record-table.js';
import { sha256 } from '../../sheets/digest.js';
import { FileRefused } from '../../sheets/table-file.js';
import { readZip } from '../../sheets/zip.js';
import { ABOUT_FILE, RECORD_FILE_FORM, RECORD_FILE_VERSION, tableFile } from './record-form.js';
import type { RecordAbout, TableAbout } from './record-form.js';

/** Something that is wrong with a file of a record, and where: the file in it, the row under its headings from 2, the column. */
export interface RecordFault {
  readonly file: string | null;
  readonly row: number | null;
  readonly column: string | null;
  /** What is wrong and what would be right, in words and without the value. */
  readonly message: string;
}

/** The zip of a record, opened: its files are those that it says it has. */
export interface RecordFile {
  readonly about: RecordAbout;
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/** No record of a team is larger; a file that is has been made by mistake or to harm. */
const LIMITS = {
  fileBytes: 128 * 1024 * 1024,
  unpackedBytes: 256 * 1024 * 1024,
  files: 10_000,
} as const;

/** A fault of the file as a whole. */
export function faultOfFile(message: string, file: string | null = null): RecordFault {
  return { file, row: null, column: null, message };
}

/** Opens the zip of a record, within limits, and holds every table to its digest. */
export function openRecordFile(bytes: Uint8Array): RecordFile | { readonly faults: readonly RecordFault[] } {
  const files = unpacked(bytes);
  if (typeof files === 'string') return { faults: [faultOfFile(`The file cannot be used: ${files}.`)] };
  const about = aboutOf(files.get(ABOUT_FILE));
  if (typeof about === 'string') return { faults: [faultOfFile(about, ABOUT_FILE)] };
  const faults = RECORD_TABLES.flatMap((table) => tableFaults(table, about, files));
  return faults.length > 0 ? { faults } : { about, files };
}

function unpacked(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> | string {
  try {
    return readZip(bytes, LIMITS);
  } catch (error) {
    if (error instanceof FileRefused) return error.message;
    throw error;
  }
}

function aboutOf(content: Uint8Array | undefined): RecordAbout | string {
  if (content === undefined)
    return 'It is missing: this is no record of a team that was taken out as tables.';
  const read = parsed(content);
  if (!isRecord(read) || read['form'] !== RECORD_FILE_FORM)
    return 'It does not say that this is the record of a team.';
  if (read['version'] !== RECORD_FILE_VERSION) {
    return `The record is of another form: this program reads version ${RECORD_FILE_VERSION}.`;
  }
  const { exportedAt, team, tables } = read;
  const isWhole =
    typeof exportedAt === 'string' &&
    typeof team === 'string' &&
    Array.isArray(tables) &&
    tables.every(isTableAbout);
  if (!isWhole)
    return 'It does not say when the record was taken out, of which team, and what its tables are.';
  return { form: RECORD_FILE_FORM, version: RECORD_FILE_VERSION, exportedAt, team, tables };
}

function tableFaults(
  table: RecordTable,
  about: RecordAbout,
  files: RecordFile['files'],
): readonly RecordFault[] {
  const file = tableFile(table);
  const content = files.get(file);
  const told = about.tables.find((each) => each.table === table.name);
  if (content === undefined || told === undefined) return [faultOfFile('The table is missing.', file)];
  if (sha256(content) === told.digest) return [];
  return [faultOfFile('The table is not as it was when the record was taken out.', file)];
}

function isTableAbout(value: unknown): value is TableAbout {
  return (
    isRecord(value) &&
    typeof value['table'] === 'string' &&
    typeof value['file'] === 'string' &&
    typeof value['digest'] === 'string' &&
    Number.isSafeInteger(value['rows'])
  );
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function parsed(content: Uint8Array): unknown {
  try {
    return JSON.parse(Buffer.from(content).toString('utf8'));
  } catch {
    return null;
  }
}
