import { mappedColumn } from '../../domain/imports/mapping.js';
import type { Mapping } from '../../domain/imports/mapping.js';
import type { CellFault } from '../../domain/imports/read-row.js';
import type { Refusal } from '../../domain/refusal/refusal.js';

/**
 * A refusal of a use case, told at the columns of the sheet.
 *
 * @param columns column id by JSON Pointer
 */
export function faultsAtColumns(
  refusal: Refusal,
  columns: Readonly<Record<string, string>>,
  mapping: Mapping,
): { readonly faults: readonly CellFault[]; readonly isUnusual: boolean } {
  if (refusal.code !== 'rules-broken' && refusal.code !== 'please-check') {
    return {
      faults: [{ heading: null, value: '', message: OTHER[refusal.code] ?? 'This cannot be taken.' }],
      isUnusual: false,
    };
  }
  const faults = refusal.faults.map(({ pointer, message }): CellFault => {
    const columnId = columnOf(columns, pointer);
    const heading = columnId === null ? null : (mappedColumn(mapping, columnId)?.heading ?? null);
    return { heading, value: '', message };
  });
  return { faults, isUnusual: refusal.code === 'please-check' };
}

const OTHER: Readonly<Partial<Record<Refusal['code'], string>>> = {
  'not-found':
    'There is no such referral in the record: the NHS number and the day of receipt are not known together.',
  'referral-already-open': 'The person has another referral that is still open.',
  'patient-already-registered': 'The NHS number is somebody else’s in the record.',
  'already-closed': 'The referral is closed in the record, and nothing can be added to it.',
  'already-triaged': 'The referral was triaged in the record.',
};

/** The column of the longest pointer that the fault lies in. */
function columnOf(columns: Readonly<Record<string, string>>, pointer: string): string | null {
  const parts = pointer.split('/');
  while (parts.length > 1) {
    const column = columns[parts.join('/')];
    if (column !== undefined) return column;
    parts.pop();
  }
  return null;
}
