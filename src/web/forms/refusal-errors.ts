import type { Fault, Refusal } from '../../domain/refusal/refusal.js';
import type { Web } from '../web.js';
import type { FormErrors } from './form-errors.js';

/** What a use case refused, as errors of the form: faults at their fields, anything else of the form as a whole. */
export function refusalErrors(
  { wordsFor }: Web,
  refusal: Refusal,
  atFields: (faults: readonly Fault[]) => FormErrors,
): FormErrors {
  if (refusal.code === 'rules-broken' || refusal.code === 'please-check') return atFields(refusal.faults);
  const { title, detail } = wordsFor(refusal);
  return [{ field: '', message: `${title}. ${detail}` }];
}
