import type { Fraction } from '../exact/fraction.js';
import { compare } from '../exact/fraction.js';
import { show } from './accepted-values.js';
import type { Measure } from './measure.js';
import type { FormLimits, Questionnaire } from './questionnaire.js';
import type { TypedScoreFault } from './typed-score.js';
import { readTypedScore } from './typed-score.js';

/** Why a typed score is none of the form. */
export type FormScoreFault = TypedScoreFault | 'form-missing' | 'unknown-form';

/** A typed score on a form read exactly, or refused with words that say what is accepted. */
export type FormScore =
  | { readonly kind: 'read'; readonly value: Fraction }
  | { readonly kind: 'refused'; readonly fault: FormScoreFault; readonly message: string };

/**
 * The forms of which one must be named with a score of this measure, and must be the same at both ends.
 *
 * @returns empty where the questionnaire has one form only, or the form says nothing about this measure
 * @example formsOf(EQ-5D-5L, 'eq-vas') -> []; formsOf(EQ-5D-5L, 'eq-5d-5l-index') -> two value sets
 */
export function formsOf(questionnaire: Questionnaire, measureId: string): readonly string[] {
  const { forms, formMeasureIds } = questionnaire;
  return formMeasureIds === null || formMeasureIds.includes(measureId) ? forms : [];
}

/**
 * Reads a typed score together with the form on which it was had.
 *
 * @param questionnaire the questionnaire
 * @param measure one of its measures
 * @param value as typed
 * @param form the name of the form; null where none was named. A form that does not belong to the measure is ignored.
 * @returns the exact value; refused as by `readTypedScore`, without a needed form, or outside the limits of the form
 * @example readFormScore(EQ-5D-5L, index, 0.97, 'england-2018') -> refused: nothing lies between 0.95 and 1
 */
export function readFormScore(
  questionnaire: Questionnaire,
  measure: Measure,
  value: number,
  form: string | null,
): FormScore {
  const forms = formsOf(questionnaire, measure.id);
  if (forms.length > 0 && (form === null || !forms.includes(form))) {
    const fault = form === null ? 'form-missing' : 'unknown-form';
    return { kind: 'refused', fault, message: `Name the form of ${measure.name}: ${forms.join(', ')}.` };
  }
  const read = readTypedScore(measure, value);
  if (read.kind === 'refused') return read;
  const limits = questionnaire.formLimits.find(
    (candidate) => candidate.form === form && candidate.measureId === measure.id,
  );
  if (limits === undefined || isOnForm(limits, read.value)) return read;
  const gap =
    limits.nextBelowMax === null
      ? ''
      : `, with nothing between ${show(limits.nextBelowMax)} and ${show(limits.max)}`;
  const message = `${measure.name} on ${limits.form} is ${show(limits.min)} to ${show(limits.max)}${gap}; you gave ${value}.`;
  return { kind: 'refused', fault: 'out-of-range', message };
}

function isOnForm({ min, max, nextBelowMax }: FormLimits, value: Fraction): boolean {
  if (compare(value, min) < 0 || compare(value, max) > 0) return false;
  return nextBelowMax === null || compare(value, nextBelowMax) <= 0 || compare(value, max) === 0;
}
