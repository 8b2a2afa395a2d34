import type { PropsWithChildren } from '@kitajs/html';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';

/** What the form of the settings holds, and what is wrong with it. */
export interface Filled {
  readonly form: FormValues;
  readonly errors: FormErrors;
}

/** A part of the settings under its head. */
export function Section({ title, children }: PropsWithChildren<{ readonly title: string }>): JSX.Element {
  return (
    <section>
      <h2 safe>{title}</h2>
      {children}
    </section>
  );
}

/** What a field holds, and what is wrong with it. */
export function at({ form, errors }: Filled, name: string) {
  return { value: textOf(form, name), error: errorAt(errors, name) };
}
