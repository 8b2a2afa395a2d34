/** Why the record takes no writes at this moment: its disk is full, or it cannot be written for another reason. */
export type NotWritable = 'full' | 'not-writable';

/** Result codes of SQLite by their first part; the rest says where it happened. */
const CODES: readonly (readonly [start: string, NotWritable])[] = [
  ['SQLITE_FULL', 'full'],
  ['SQLITE_IOERR', 'not-writable'],
  ['SQLITE_READONLY', 'not-writable'],
  ['SQLITE_CANTOPEN', 'not-writable'],
  ['SQLITE_CORRUPT', 'not-writable'],
  ['SQLITE_NOTADB', 'not-writable'],
  // Another process has held the record for longer than a write waits.
  ['SQLITE_BUSY', 'not-writable'],
];

/**
 * Whether an error is the record's own: its disk, its rights, its file; null for a fault of the program.
 *
 * @example notWritable({ code: 'SQLITE_IOERR_WRITE' }) -> 'not-writable'
 */
export function notWritable(error: unknown): NotWritable | null {
  if (!(error instanceof Error) || !('code' in error)) return null;
  const code = String(error.code);
  return CODES.find(([start]) => code === start || code.startsWith(`${start}_`))?.[1] ?? null;
}
