import { columnsOfPart } from '../../domain/imports/columns-of-part.js';
import type { Sourced } from '../../domain/imports/course-draft.js';
import { mappedColumn } from '../../domain/imports/mapping.js';
import type { Mapping } from '../../domain/imports/mapping.js';
import type { CourseFault } from '../../domain/imports/judgement.js';
import type { Refusal } from '../../domain/refusal/refusal.js';

/**
 * A refusal of a use case, told at the columns and the rows of the sheet.
 *
 * @param part what was refused; null where it is the course as a whole
 */
export function faultsAtColumns(
  refusal: Refusal,
  part: Sourced<object> | null,
  mapping: Mapping,
): { readonly faults: readonly CourseFault[]; readonly isUnusual: boolean } {
  const rows = part === null || typeof part.from === 'string' ? {} : part.from.rows;
  if (refusal.code !== 'rules-broken' && refusal.code !== 'please-check') {
    return {
      faults: [
        {
          ...{ heading: null, value: '', row: rows[''] ?? null },
          message: OTHER[refusal.code] ?? 'This cannot be taken.',
        },
      ],
      isUnusual: false,
    };
  }
  const columns = part === null ? {} : columnsOfPart(part);
  const faults = refusal.faults.map(({ pointer, message }): CourseFault => {
    const columnId = nearest(columns, pointer);
    const heading = columnId === null ? null : (mappedColumn(mapping, columnId)?.heading ?? null);
    return { heading, value: '', message, row: nearest(rows, pointer) };
  });
  return { faults, isUnusual: refusal.code === 'please-check' };
}

const OTHER: Readonly<Partial<Record<Refusal['code'], string>>> = {
  'not-found':
    'There is no such referral in the record: the NHS number and the day of receipt are not known together.',
  'referral-already-open': 'The person has another referral that is still open.',
  'patient-already-registered': 'The NHS number is somebody else’s in the record.',
  'already-closed': 'The referral is closed in the record, and nothing can be added to it.',
  'assessment-already-recorded': 'The record has this assessment already.',
  'already-triaged': 'The referral was triaged in the record.',
};

/** What is named by the longest pointer that the fault lies in. */
function nearest<Named>(named: Readonly<Record<string, Named>>, pointer: string): Named | null {
  const parts = pointer.split('/');
  while (parts.length > 0) {
    const found = named[parts.join('/')];
    if (found !== undefined) return found;
    parts.pop();
  }
  return null;
}
