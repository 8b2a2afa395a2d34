import type { SheetRow } from '../domain/imports/cell.js';

/** One sheet of a file: its rows as they stand, blank ones left out. */
export interface Sheet {
  readonly name: string;
  readonly rows: readonly SheetRow[];
}

/** What a file of a table was read as; a refusal says in words what is wrong with the file. */
export type TableFile =
  | { readonly kind: 'read'; readonly sheets: readonly Sheet[] }
  | { readonly kind: 'refused'; readonly message: string };

/** No sheet of a team is larger; a file that is has been made by mistake or to harm. */
export const LIMITS = {
  fileBytes: 64 * 1024 * 1024,
  rows: 200_000,
  columns: 300,
  cellCharacters: 10_000,
  /** Of the parts of a workbook, unpacked. */
  unpackedBytes: 128 * 1024 * 1024,
  parts: 500,
} as const;

/** A refusal of a file. */
export function refusedFile(message: string): { readonly kind: 'refused'; readonly message: string } {
  return { kind: 'refused', message };
}

/** Thrown while a file is read, when it passes a limit. */
export class FileRefused extends Error {}

export const TOO_MANY_COLUMNS = `The sheet has more than ${LIMITS.columns} columns. Leave the columns of the referrals and send it again.`;
export const TOO_MANY_ROWS = `The sheet has more than ${LIMITS.rows} rows, blank ones included. Delete the blank rows below the table, or send it in parts.`;
export const REACHES_TOO_FAR =
  'Something stands far outside the table, and the sheet reaches to there. Delete the rows below the table and the columns beside it, or save the table as CSV.';
