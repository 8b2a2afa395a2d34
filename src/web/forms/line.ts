import { ACCEPTED_LINE, TEXT_NOT_ACCEPTED } from '../../domain/text/accepted-text.js';
import type { FormError } from './form-errors.js';

/**
 * What is wrong with a line of text that must be given; null when nothing is.
 *
 * @param text trimmed
 * @param max length in characters
 */
export function lineFault(field: string, text: string, max: number): FormError | null {
  if (text === '') return { field, message: 'This must be given.' };
  if (text.length > max)
    return { field, message: `Use at most ${max} characters. You entered ${text.length}.` };
  return ACCEPTED_LINE.test(text) ? null : { field, message: TEXT_NOT_ACCEPTED };
}

/** Characters that the reason of a change may have, and no more. */
export const REASON_MAX = 500;

/** What is wrong with the reason of a change; null when nothing is. */
export function reasonFault(field: string, text: string): FormError | null {
  return text === ''
    ? { field, message: 'Give the reason: it is kept in the history.' }
    : lineFault(field, text, REASON_MAX);
}
