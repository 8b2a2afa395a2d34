import type { Selectable } from 'kysely';
import type { EnteredInError } from '../domain/history/entered-in-error.js';
import type { InErrorColumns } from './record-tables.js';

/** The mark of a stored row; null where the entry stands. */
export function inErrorFromRow(row: Selectable<InErrorColumns>): EnteredInError | null {
  const {
    entered_in_error_at: markedAt,
    entered_in_error_by: markedBy,
    entered_in_error_reason: reason,
  } = row;
  return markedAt === null || markedBy === null || reason === null ? null : { markedAt, markedBy, reason };
}

/** The columns of a mark; null takes it away. */
export function inErrorColumns(mark: EnteredInError | null): Selectable<InErrorColumns> {
  return {
    entered_in_error_at: mark?.markedAt ?? null,
    entered_in_error_by: mark?.markedBy ?? null,
    entered_in_error_reason: mark?.reason ?? null,
  };
}
