import { typedDateOf } from '../forms/date-entry.js';
import type { TypedDate } from '../forms/date-entry.js';
import { isTicked, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';

/** What stands in the fields of the form, as it was typed. */
export interface TypedValues {
  readonly text: (name: string) => string;
  readonly date: (name: string) => TypedDate;
  readonly isTicked: (name: string) => boolean;
}

/** The fields of a form that was sent; of a new one, with what is chosen to begin with. */
export function typedValues(form: FormValues): TypedValues {
  return {
    text: (name) => textOf(form, name),
    date: (name) => typedDateOf(form, name),
    isTicked: (name) => isTicked(form, name),
  };
}
