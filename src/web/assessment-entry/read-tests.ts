import type { SitToStandEntry, WalkTestEntry } from '../../domain/assessment/assessment.js';
import {
  NOT_DONE_REASONS,
  STOP_REASONS,
  TEST_PLACES,
  WALKING_AIDS,
} from '../../domain/referral/closed-sets.js';
import type { EntryReader } from '../forms/entry-reader.js';
import type { FormError } from '../forms/form-errors.js';
import { textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import {
  AID_NOT_RECORDED,
  ATTEMPTS,
  ENDURANCE_TEST,
  MEASURED_IN_WALK,
  notDoneField,
  RESULT_OF_WALK,
  SHARED_NUMBERS,
  STANDS,
  standTestField,
} from './field-names.js';
import type { AttemptName, StandName } from './field-names.js';
import { isFurther, isNotRecorded, placeOf, walkConditionField } from './walk-conditions.js';

/** What reads a form, and where what is wrong with it goes. */
export interface Reading {
  readonly form: FormValues;
  readonly reader: EntryReader;
  readonly number: (name: string) => number | null;
  readonly errors: FormError[];
}

/** The walks of which something was typed; what was the case during one alone makes none. */
export function attemptsIn(form: FormValues): readonly AttemptName[] {
  const names = [...RESULT_OF_WALK, ...MEASURED_IN_WALK, 'stopReason', 'notDoneReason'];
  return ATTEMPTS.filter((attempt) => names.some((name) => textOf(form, `${attempt}.${name}`) !== ''));
}

/** The sit-to-stand tests that have a result or a reason why they were not done. */
export function standsIn(form: FormValues): readonly StandName[] {
  return STANDS.filter((stand) =>
    ['repetitions', 'timeS', 'notDoneReason'].some((name) => textOf(form, `${stand}.${name}`) !== ''),
  );
}

/** Reads one walk. */
export function walkTest(attempt: AttemptName, reading: Reading): WalkTestEntry {
  const { form, reader } = reading;
  const at = (name: Parameters<typeof walkConditionField>[2]): string =>
    walkConditionField(form, attempt, name);
  const conditions = {
    ...numbersAt(SHARED_NUMBERS, at, reading),
    walkingAid:
      textOf(form, at('walkingAid')) === AID_NOT_RECORDED
        ? null
        : reader.optionalChoice(at('walkingAid'), WALKING_AIDS),
  };
  for (const name of SHARED_NUMBERS) {
    if (!isNotRecorded(form, attempt, name) || textOf(form, at(name)) === '') continue;
    reading.errors.push({ field: at(name), message: 'Give it, or tick that it was not recorded: not both.' });
  }
  return {
    ...whichWalk(attempt, form),
    place: reader.optionalChoice(at('place'), TEST_PLACES) ?? 'course',
    ...numbersAt(RESULT_OF_WALK, (name) => `${attempt}.${name}`, reading),
    ...conditions,
    ...numbersAt(MEASURED_IN_WALK, (name) => `${attempt}.${name}`, reading),
    stopReason: reader.optionalChoice(`${attempt}.stopReason`, STOP_REASONS),
    notDoneReason: reader.optionalChoice(notDoneField(attempt), NOT_DONE_REASONS),
  };
}

function whichWalk(attempt: AttemptName, form: FormValues): Pick<WalkTestEntry, 'test' | 'attempt'> {
  if (attempt === 'endurance') return { test: ENDURANCE_TEST, attempt: 1 };
  if (!isFurther(attempt)) return { test: textOf(form, 'walkTest'), attempt: attempt === 'walk2' ? 2 : 1 };
  return {
    test: textOf(form, `${attempt}.test`),
    attempt: textOf(form, `${attempt}.attempt`) === '2' ? 2 : 1,
  };
}

/** Reads one sit-to-stand test. */
export function sitToStand(stand: StandName, reading: Reading): SitToStandEntry {
  const { form, reader, errors } = reading;
  const test = textOf(form, standTestField(stand));
  if (test === '') {
    errors.push({ field: standTestField(stand), message: 'Choose which sit-to-stand test it was.' });
  }
  const hands = reader.optionalChoice(`${stand}.handsUsed`, ['yes', 'no']);
  return {
    test,
    place: reader.optionalChoice(placeOf(form, stand), TEST_PLACES) ?? 'course',
    ...numbersAt(['repetitions', 'timeS', 'chairHeightCm'], (name) => `${stand}.${name}`, reading),
    handsUsed: hands === null ? null : hands === 'yes',
    notDoneReason: reader.optionalChoice(notDoneField(stand), NOT_DONE_REASONS),
  };
}

function numbersAt<Name extends string>(
  names: readonly Name[],
  at: (name: Name) => string,
  { number }: Reading,
): Record<Name, number | null> {
  return Object.fromEntries(names.map((name) => [name, number(at(name))])) as Record<Name, number | null>;
}
