import { chosenOf, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { MORE_WALKS, notRecordedField, placeField } from './field-names.js';
import type { AttemptName, SharedWalkField } from './field-names.js';

/**
 * The field that holds a condition of a walk: its own where it has one, else that of the first walk.
 *
 * @example walk2, walkingAid -> 'walk2.walkingAid' where an aid was chosen there or was not recorded; else 'walkingAid'
 */
export function walkConditionField(form: FormValues, attempt: AttemptName, name: SharedWalkField): string {
  const own = `${attempt}.${name}`;
  return isFurther(attempt) || textOf(form, own) !== '' || isNotRecorded(form, attempt, name) ? own : name;
}

/** Whether a condition is said not to have been recorded for this walk, whatever the first walk has. */
export function isNotRecorded(form: FormValues, attempt: AttemptName, name: SharedWalkField): boolean {
  return chosenOf(form, notRecordedField(attempt)).includes(name);
}

/** The field that says where a test was done that is no walk: its own where something is chosen there, else that of the walks. */
export function placeOf(form: FormValues, part: string): string {
  return textOf(form, placeField(part)) === '' ? 'place' : placeField(part);
}

/** Whether a walk has nothing in common with the first one: all its conditions are its own. */
export function isFurther(attempt: AttemptName): boolean {
  return MORE_WALKS.some((more) => more === attempt);
}
