import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { ACCEPTED_LINE, ACCEPTED_TEXT, TEXT_NOT_ACCEPTED } from '../../domain/text/accepted-text.js';
import { readDate, typedDateOf } from './date-entry.js';
import type { FormError } from './form-errors.js';
import type { FormValues } from './form-values.js';
import { textOf, wholeNumberOf } from './form-values.js';

/** Reads the fields of a form one by one and gathers what is wrong with them. A field that is wrong or empty reads as null. */
export interface EntryReader {
  /** What is wrong so far, in the order in which the fields were read. */
  readonly errors: FormError[];
  /** A line of text that must be there. */
  readonly line: (name: string, maxLength: number, whenEmpty: string) => string | null;
  readonly optionalText: (name: string, maxLength: number) => string | null;
  /** One of a closed set that must be chosen. */
  readonly choice: <Value extends string>(
    name: string,
    values: readonly Value[],
    whenEmpty: string,
  ) => Value | null;
  readonly optionalChoice: <Value extends string>(name: string, values: readonly Value[]) => Value | null;
  readonly date: (name: string, whenEmpty: string) => PlainDate | null;
  readonly optionalDate: (name: string) => PlainDate | null;
  readonly optionalWhole: (
    name: string,
    range: { readonly min: number; readonly max: number },
  ) => number | null;
}

/** A reader of a form that was sent. */
export function entryReader(form: FormValues): EntryReader {
  const errors: FormError[] = [];
  const wrong = (field: string, message: string): null => {
    errors.push({ field, message });
    return null;
  };
  const text = (name: string, maxLength: number, accepted: RegExp): string | null => {
    const typed = textOf(form, name);
    if (typed === '') return null;
    if (typed.length > maxLength) {
      return wrong(name, `Give at most ${maxLength} characters. You entered ${typed.length}.`);
    }
    return accepted.test(typed) ? typed : wrong(name, TEXT_NOT_ACCEPTED);
  };
  const optionalDate = (name: string): PlainDate | null => {
    const entry = readDate(typedDateOf(form, name));
    if (entry.kind === 'date') return entry.date;
    return entry.kind === 'empty' ? null : wrong(name, entry.message);
  };
  const optionalChoice = <Value extends string>(name: string, values: readonly Value[]): Value | null => {
    const typed = textOf(form, name);
    if (typed === '') return null;
    return values.find((value) => value === typed) ?? wrong(name, 'Choose one of the list.');
  };
  /** What must be there and is not, is wrong; what is wrong already is not told twice. */
  const needed = <Value>(name: string, read: () => Value | null, whenEmpty: string): Value | null => {
    const before = errors.length;
    const value = read();
    return value === null && errors.length === before ? wrong(name, whenEmpty) : value;
  };
  return {
    errors,
    line: (name, maxLength, whenEmpty) => needed(name, () => text(name, maxLength, ACCEPTED_LINE), whenEmpty),
    optionalText: (name, maxLength) => text(name, maxLength, ACCEPTED_TEXT),
    choice: (name, values, whenEmpty) => needed(name, () => optionalChoice(name, values), whenEmpty),
    optionalChoice,
    date: (name, whenEmpty) => needed(name, () => optionalDate(name), whenEmpty),
    optionalDate,
    optionalWhole: (name, { min, max }) => {
      const typed = textOf(form, name);
      if (typed === '') return null;
      const number = wholeNumberOf(form, name);
      const isRight = number !== null && number >= min && number <= max;
      return isRight
        ? number
        : wrong(name, `Give a whole number from ${min} to ${max}. You entered ${typed}.`);
    },
  };
}
