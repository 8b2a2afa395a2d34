import { plainDate } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { NotDoneReason } from '../referral/closed-sets.js';
import type { RowValue } from './read-row.js';

/** The values of a row, asked for by column id; null where the row says nothing. */
export interface RowValues {
  readonly has: (id: string) => boolean;
  readonly text: (id: string) => string | null;
  readonly number: (id: string) => number | null;
  readonly date: (id: string) => PlainDate | null;
  readonly notDone: (id: string) => NotDoneReason | null;
  /** A code; the column has made sure that it is one of the set. */
  readonly code: <Code extends string>(id: string) => Code | null;
}

/** Lets the values of a row be asked for by their type. */
export function rowValues(values: ReadonlyMap<string, RowValue>): RowValues {
  const text = (id: string): string | null => {
    const read = values.get(id);
    return typeof read === 'string' ? read : null;
  };
  return {
    has: (id) => values.has(id),
    text,
    number: (id) => {
      const read = values.get(id);
      return typeof read === 'number' ? read : null;
    },
    date: (id) => {
      const read = text(id);
      return read === null ? null : plainDate(read);
    },
    notDone: (id) => {
      const read = values.get(id);
      return typeof read === 'object' ? read.notDone : null;
    },
    code: <Code extends string>(id: string) => text(id) as Code | null,
  };
}
