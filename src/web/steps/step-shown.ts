import type { Meanwhile } from '../../domain/history/history.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { errorsOf, NO_ERRORS } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { FormValues } from '../forms/form-values.js';
import { refusalErrors } from '../forms/refusal-errors.js';
import type { Web } from '../web.js';

/** How the page of a step is shown. */
export interface StepShown {
  /** What was typed; null where nothing was yet. */
  readonly form: FormValues | null;
  readonly errors: FormErrors;
  /** What somebody else changed while the form was open; null where nothing was. */
  readonly meanwhile?: Meanwhile | null;
  readonly status: number;
}

/** A page that was just opened. */
export const NEW_STEP: StepShown = { form: null, errors: NO_ERRORS, status: 200 };

/** How a refused step is shown: somebody was quicker, or something is wrong. */
export function shownOf(web: Web, refusal: Refusal): Omit<StepShown, 'form'> {
  const { status } = web.wordsFor(refusal);
  return refusal.code === 'changed-meanwhile'
    ? { errors: NO_ERRORS, meanwhile: refusal.meanwhile, status }
    : { errors: refusalErrors(web, refusal, errorsOf), status };
}
