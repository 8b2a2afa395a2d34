import type { AssessmentEntry, QuestionnaireEntry } from '../../domain/assessment/assessment.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { QUESTIONNAIRES } from '../../domain/measures/registered.js';
import type { PhysicalTest } from '../../domain/measures/physical-test.js';
import type { Questionnaire } from '../../domain/measures/questionnaire.js';
import { NOT_DONE_REASONS, SAFETY_SCREENS } from '../../domain/referral/closed-sets.js';
import type { Timepoint } from '../../domain/referral/closed-sets.js';
import { entryReader } from '../forms/entry-reader.js';
import type { EntryReader } from '../forms/entry-reader.js';
import type { FormErrors } from '../forms/form-errors.js';
import { chosenOf, numberOf, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';
import { confirmField, formField, itemField, notDoneField, scoreField } from './field-names.js';
import type { AttemptName, StandName } from './field-names.js';
import { physicalTest, physicalTestsIn } from './read-physical.js';
import { attemptsIn, sitToStand, standsIn, walkTest } from './read-tests.js';

/** A form read as an assessment. */
export interface ReadEntry {
  readonly form: FormValues;
  /** With today for a date that cannot be read: then there are errors, and nothing is recorded. */
  readonly entry: AssessmentEntry;
  readonly errors: FormErrors;
  /** Tests and questionnaires in the order of the entry, so that pointers lead back to fields. */
  readonly attempts: readonly AttemptName[];
  readonly stands: readonly StandName[];
  readonly questionnaires: readonly Questionnaire[];
  readonly physicalTests: readonly PhysicalTest[];
}

/** Reads the form of an assessment. What was left empty is not in the entry: no walk, no questionnaire, no number. */
export function readEntry(form: FormValues, timepoint: Timepoint, today: PlainDate): ReadEntry {
  const reader = entryReader(form);
  const errors = [...reader.errors];
  const number = (name: string): number | null => {
    const typed = textOf(form, name);
    const value = numberOf(form, name);
    if (typed !== '' && value === null) {
      errors.push({ field: name, message: `Give a number. You entered ${typed.slice(0, 40)}.` });
    }
    return value;
  };
  const numbers = <Name extends string>(names: readonly Name[], prefix = ''): Record<Name, number | null> =>
    Object.fromEntries(names.map((name) => [name, number(prefix + name)])) as Record<Name, number | null>;
  const has = (names: readonly string[]): boolean => names.some((name) => textOf(form, name) !== '');
  const reading = { form, reader, number, errors };

  const attempts = attemptsIn(form);
  const stands = standsIn(form);
  const questionnaires = QUESTIONNAIRES.filter((questionnaire) => has(fieldsOfQuestionnaire(questionnaire)));
  const physicalTests = physicalTestsIn(form);
  const assessedOn = reader.date('assessedOn', 'Give the day of the assessment.');
  const siteId = reader.choice('siteId', [textOf(form, 'siteId')], 'Choose the site.');
  const spirometry = numbers(['fev1L', 'fev1PercentPredicted', 'fev1FvcPercent']);
  const resting = numbers(['spo2Percent', 'heartRateBpm', 'systolicMmHg', 'diastolicMmHg']);
  if (attempts.some((attempt) => ['walk1', 'walk2'].includes(attempt)) && textOf(form, 'walkTest') === '') {
    errors.push({ field: 'walkTest', message: 'Choose which walk test it was.' });
  }
  const entry: AssessmentEntry = {
    timepoint,
    assessedOn: assessedOn ?? today,
    siteId: siteId ?? '',
    ...numbers(['heightCm', 'weightKg']),
    spirometry: isEmpty(spirometry) ? null : spirometry,
    resting: isEmpty(resting) ? null : resting,
    safetyScreen:
      reader.choice('safetyScreen', SAFETY_SCREENS, 'Say whether the checklist raised a concern.') ??
      'not-recorded',
    safetyNote: reader.optionalText('safetyNote', 2000),
    safetyFindings: chosenOf(form, 'safetyFindings'),
    walkTests: attempts.map((attempt) => walkTest(attempt, reading)),
    sitToStands: stands.map((stand) => sitToStand(stand, reading)),
    questionnaires: questionnaires.map((questionnaire) => answers(questionnaire, form, reader, number)),
    physicalTests: physicalTests.map((test) => physicalTest(test, reading)),
    notes: reader.optionalText('notes', 5000),
    confirmed: [],
  };
  return {
    form,
    entry,
    errors: [...reader.errors, ...errors],
    attempts,
    stands,
    questionnaires,
    physicalTests,
  };
}

function answers(
  questionnaire: Questionnaire,
  form: FormValues,
  reader: EntryReader,
  number: (name: string) => number | null,
): QuestionnaireEntry {
  const { id } = questionnaire;
  const items = questionnaire.items.map((_limits, index) => number(itemField(id, index + 1)));
  const variant = textOf(form, formField(id));
  return {
    questionnaire: id,
    form: variant === '' ? null : variant,
    items: items.every((item) => item === null) ? null : items,
    typedScores: questionnaire.measures.flatMap(({ id: measure }) => {
      const value = number(scoreField(id, measure));
      return value === null ? [] : [{ measure, value }];
    }),
    notDoneReason: reader.optionalChoice(notDoneField(`q.${id}`), NOT_DONE_REASONS),
  };
}

/** Every field that makes a questionnaire a part of the assessment: the variant alone does not. */
function fieldsOfQuestionnaire({ id, items, measures }: Questionnaire): readonly string[] {
  return [
    ...items.map((_limits, index) => itemField(id, index + 1)),
    ...measures.map((measure) => scoreField(id, measure.id)),
    notDoneField(`q.${id}`),
  ];
}

function isEmpty(numbers: Readonly<Record<string, number | null>>): boolean {
  return Object.values(numbers).every((value) => value === null);
}

/** Whether the value of a field was looked at and said to be right: another value is asked about again. */
export function isConfirmed(form: FormValues, field: string): boolean {
  const confirmed = textOf(form, confirmField(field));
  return confirmed !== '' && confirmed === shownValue(form, field);
}

/** What is asked about: the value of the field, or for a whole questionnaire what was typed of it. */
export function shownValue(form: FormValues, field: string): string {
  return textOf(form, field) === '' ? 'yes' : textOf(form, field);
}
