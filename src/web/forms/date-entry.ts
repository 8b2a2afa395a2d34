import { parsePlainDate } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { textOf } from './form-values.js';
import type { FormValues } from './form-values.js';

/** A date as it was typed, in three parts. */
export interface TypedDate {
  readonly day: string;
  readonly month: string;
  readonly year: string;
}

export const NO_DATE: TypedDate = { day: '', month: '', year: '' };

/** What a date field read: a date, nothing, or something that is no date. */
export type DateEntry =
  | { readonly kind: 'date'; readonly date: PlainDate }
  | { readonly kind: 'empty' }
  | { readonly kind: 'no-date'; readonly message: string };

/** The three parts of a date field as they were typed. */
export function typedDateOf(form: FormValues, name: string): TypedDate {
  return {
    day: textOf(form, `${name}-day`),
    month: textOf(form, `${name}-month`),
    year: textOf(form, `${name}-year`),
  };
}

/** The three parts of a date, to be edited. @example partsOfDate('2026-05-04') -> 4, 5, 2026 */
export function typedDate(date: PlainDate | null): TypedDate {
  if (date === null) return NO_DATE;
  const [year = '', month = '', day = ''] = date.split('-');
  return { day: String(Number(day)), month: String(Number(month)), year };
}

/**
 * Reads a date that was typed in three parts.
 *
 * @example 31, 4, 2026 -> 'There is no 31 April'; 4, 5, 2026 -> 2026-05-04
 */
export function readDate({ day, month, year }: TypedDate): DateEntry {
  if (day === '' && month === '' && year === '') return { kind: 'empty' };
  const digits = /^\d{1,2}$/;
  if (!digits.test(day) || !digits.test(month) || !/^\d{4}$/.test(year)) {
    return noDate('Give day, month and the year in four figures, such as 4 5 2026.');
  }
  const date = parsePlainDate(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
  if (date === null) return noDate(`There is no such date. You entered ${day} ${month} ${year}.`);
  return { kind: 'date', date };
}

function noDate(message: string): DateEntry {
  return { kind: 'no-date', message };
}
