import { epochMs } from '../calendar/instant.js';
import { parsePlainDate } from '../calendar/plain-date.js';
import { checkNhsNumber } from '../identity/nhs-number.js';
import type { NhsNumberRange } from '../identity/nhs-number.js';
import type { ColumnKind, RecordColumn } from './record-table.js';

/** A value of a table as it is to be stored, or what would be right instead, in words and without the value. */
export type ReadCell =
  | { readonly kind: 'value'; readonly value: string | number | null }
  | { readonly kind: 'fault'; readonly message: string };

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;
const DIGEST = /^[0-9a-f]{64}$/;
const WHOLE = /^-?\d{1,15}$/;

/**
 * Reads a cell of a table that left a record, by what its column holds.
 *
 * @param cell null for an empty one
 * @param range which NHS numbers the team may hold
 * @example a cell '1.5' of a whole number from 0 to 60 -> fault: 'must be a whole number from 0 to 60'
 */
export function readCell(column: RecordColumn, cell: string | null, range: NhsNumberRange): ReadCell {
  if (cell === null) {
    return column.isOptional
      ? { kind: 'value', value: null }
      : { kind: 'fault', message: 'must not be empty' };
  }
  const { kind } = column;
  if (kind.type === 'number') return readWhole(kind, cell);
  if (kind.type === 'yes-no') {
    return cell === '0' || cell === '1'
      ? { kind: 'value', value: Number(cell) }
      : { kind: 'fault', message: 'must be 0 or 1' };
  }
  // A number leads to the row of a table that is numbered.
  if (kind.type === 'reference' && kind.column === 'number') {
    return readWhole({ min: 1, max: Number.MAX_SAFE_INTEGER }, cell);
  }
  const message = faultOf(kind, cell, range);
  return message === null ? { kind: 'value', value: cell } : { kind: 'fault', message };
}

function readWhole({ min, max }: { readonly min: number; readonly max: number }, cell: string): ReadCell {
  const value = WHOLE.test(cell) ? Number(cell) : Number.NaN;
  if (value >= min && value <= max) return { kind: 'value', value };
  return { kind: 'fault', message: `must be a whole number from ${min} to ${max}` };
}

function faultOf(
  kind: Exclude<ColumnKind, { readonly type: 'number' | 'yes-no' }>,
  cell: string,
  range: NhsNumberRange,
): string | null {
  switch (kind.type) {
    // The last three stand in no table that comes back.
    case 'text':
    case 'file':
    case 'decimal':
    case 'month':
    case 'pseudonym':
      return null;
    case 'id':
    case 'reference':
      return UUID.test(cell) ? null : 'must be an id as the record makes them';
    case 'code':
      return kind.codes.includes(cell) ? null : `must be one of: ${kind.codes.join(', ')}`;
    case 'nhs-number':
      return isStoredNhsNumber(cell, range) ? null : NHS_NUMBER_FAULTS[range];
    case 'date':
      return parsePlainDate(cell) === null ? 'must be a date such as 2026-03-31' : null;
    case 'instant':
      return isInstant(cell) ? null : 'must be an instant such as 2026-03-31T09:15:00.000Z';
    case 'digest':
      return DIGEST.test(cell) ? null : 'must be 64 hexadecimal digits';
    case 'json':
      return isOfForm(kind.form, cell) ? null : `must be JSON: ${FORM_WORDS[kind.form]}`;
  }
}

const NHS_NUMBER_FAULTS: Readonly<Record<NhsNumberRange, string>> = {
  live: 'must be an NHS number of ten digits with the right check digit, not one for tests',
  demo: 'must be an NHS number of ten digits with the right check digit, of the range for tests',
};

const FORM_WORDS = {
  object: 'an object',
  'list-of-texts': 'a list of texts',
  'list-of-numbers': 'a list of numbers, null for none',
} as const;

function isStoredNhsNumber(cell: string, range: NhsNumberRange): boolean {
  const checked = checkNhsNumber(cell, range);
  return checked.kind === 'valid' && checked.nhsNumber === cell;
}

function isInstant(cell: string): boolean {
  if (!INSTANT.test(cell) || parsePlainDate(cell.slice(0, 10)) === null) return false;
  try {
    epochMs(cell);
    return true;
  } catch {
    return false;
  }
}

function isOfForm(form: 'object' | 'list-of-texts' | 'list-of-numbers', cell: string): boolean {
  const read = parsedJson(cell);
  switch (form) {
    case 'object':
      return typeof read === 'object' && read !== null && !Array.isArray(read);
    case 'list-of-texts':
      return Array.isArray(read) && read.every((each) => typeof each === 'string');
    case 'list-of-numbers':
      return Array.isArray(read) && read.every((each) => each === null || typeof each === 'number');
  }
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
