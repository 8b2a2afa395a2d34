import type { Fault } from '../../domain/refusal/refusal.js';

/** What is wrong with a form: one message for a field, by its name. */
export interface FormError {
  /** Name of the field; empty where the fault is of the form as a whole. */
  readonly field: string;
  readonly message: string;
}

export type FormErrors = readonly FormError[];

export const NO_ERRORS: FormErrors = [];

/** The message at a field; null where it is in order. */
export function errorAt(errors: FormErrors, field: string): string | null {
  return errors.find((error) => error.field === field)?.message ?? null;
}

/**
 * The faults that a use case found, at the fields of the form.
 *
 * @param nameOf the field that stands for a JSON Pointer; by default its first part, so `/targets/x/percent` is `targets`
 */
export function errorsOf(
  faults: readonly Fault[],
  nameOf: (pointer: string) => string = firstPart,
): FormErrors {
  return faults.map(({ pointer, message }) => ({ field: nameOf(pointer), message }));
}

function firstPart(pointer: string): string {
  return pointer.split('/')[1] ?? '';
}

/** Id of the element that a field is reached by, in labels and in the summary of errors. */
export function fieldId(name: string): string {
  return `field-${name.replaceAll(/[^A-Za-z0-9-]/g, '_')}`;
}
