import type {
  AssessmentEntry,
  PhysicalTestEntry,
  QuestionnaireEntry,
  WalkTestEntry,
} from '../../domain/assessment/assessment.js';
import { byQuestionnaire, byTest, byTestAndAttempt } from '../../domain/assessment/stored-order.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { findPhysicalTest, findQuestionnaire } from '../../domain/measures/catalogue.js';
import { typedDate } from '../forms/date-entry.js';
import type { FormValues } from '../forms/form-values.js';
import {
  conditionField,
  confirmField,
  ENDURANCE_TEST,
  formField,
  itemField,
  MEASURED_IN_WALK,
  notDoneField,
  partField,
  RESULT_OF_WALK,
  scoreField,
  SHARED_WALK_FIELDS,
  unableField,
  valueField,
} from './field-names.js';
import type { AttemptName } from './field-names.js';
import { fieldOf } from './field-of.js';
import { readEntry, shownValue } from './read-entry.js';

type Field = readonly [name: string, value: string | number | null];

/**
 * What stands in the fields of the sheet for an assessment of the record, with what was confirmed.
 *
 * @returns null where the sheet has no room for all of it, such as for two different walk tests in one visit: then it must
 * not be corrected there, since what is not on the page would be lost
 */
export function valuesOfEntry(entry: AssessmentEntry, today: PlainDate): FormValues | null {
  const fields = [
    ...beforeTests(entry),
    ...entry.walkTests.flatMap((walk) => walkFields(walk, attemptOf(walk, entry))),
    ...entry.sitToStands.flatMap(({ test, repetitions, timeS, chairHeightCm, handsUsed, notDoneReason }) => [
      ['sitToStandTest', test] as const,
      ...named({ repetitions, timeS, chairHeightCm, notDoneReason }, 'sitToStand.'),
      ['sitToStand.handsUsed', handsUsed === null ? null : handsUsed ? 'yes' : 'no'] as const,
    ]),
    ...entry.questionnaires.flatMap(questionnaireFields),
    ...entry.physicalTests.flatMap(physicalFields),
    ['notes', entry.notes] as const,
  ];
  const values = new Map<string, readonly string[]>(
    fields.flatMap(([name, value]) => (value === null ? [] : [[name, [String(value)]] as const])),
  );
  values.set('safetyFindings', entry.safetyFindings);
  const read = readEntry(values, entry.timepoint, today);
  if (read.errors.length > 0 || inOrder(read.entry) !== inOrder(entry)) return null;
  for (const pointer of entry.confirmed) {
    const field = fieldOf(asRead(entry), pointer);
    values.set(confirmField(field), [shownValue(values, field)]);
  }
  return values;
}

function beforeTests(entry: AssessmentEntry): readonly Field[] {
  const { day, month, year } = typedDate(entry.assessedOn);
  const { siteId, heightCm, weightKg, safetyScreen, safetyNote } = entry;
  const [place = null] = [...entry.walkTests, ...entry.sitToStands, ...entry.physicalTests].map(
    (test) => test.place,
  );
  return [
    ['assessedOn-day', day],
    ['assessedOn-month', month],
    ['assessedOn-year', year],
    ...named({ siteId, heightCm, weightKg, safetyScreen, safetyNote, place }),
    ...named({ ...entry.spirometry }),
    ...named({ ...entry.resting }),
  ];
}

/** Where a walk stands on the sheet: an endurance walk that is not alone stands beside the others. */
function attemptOf({ test, attempt }: WalkTestEntry, { walkTests }: AssessmentEntry): AttemptName {
  const isBeside = test === ENDURANCE_TEST && walkTests.some((walk) => walk.test !== ENDURANCE_TEST);
  if (isBeside) return 'endurance';
  return attempt === 1 ? 'walk1' : 'walk2';
}

function walkFields(walk: WalkTestEntry, at: AttemptName): readonly Field[] {
  return [
    ['walkTest', at === 'endurance' ? null : walk.test],
    ...SHARED_WALK_FIELDS.map((name) => [name, walk[name]] as const),
    ...[...RESULT_OF_WALK, ...MEASURED_IN_WALK].map((name) => [`${at}.${name}`, walk[name]] as const),
    [`${at}.stopReason`, walk.stopReason],
    [notDoneField(at), walk.notDoneReason],
  ];
}

function questionnaireFields(answers: QuestionnaireEntry): readonly Field[] {
  const { questionnaire: id, form, items, typedScores, notDoneReason } = answers;
  return [
    [formField(id), form],
    ...(items ?? []).map((item, index) => [itemField(id, index + 1), item] as const),
    ...typedScores.map(({ measure, value }) => [scoreField(id, measure), value] as const),
    [notDoneField(`q.${id}`), notDoneReason],
  ];
}

function physicalFields(done: PhysicalTestEntry): readonly Field[] {
  const { test, conditions, parts, measure, value, notDoneReason } = done;
  const onlyMeasure = findPhysicalTest(test)?.measures[0]?.id ?? '';
  return [
    ...Object.entries(conditions).map(([id, condition]) => [conditionField(test, id), condition] as const),
    ...Object.entries(parts ?? {}).map(([id, part]) =>
      part === 'unable' ? ([unableField(test, id), 'yes'] as const) : ([partField(test, id), part] as const),
    ),
    [valueField(test, measure ?? onlyMeasure), value],
    [notDoneField(`p.${test}`), notDoneReason],
  ];
}

function named(values: Readonly<Record<string, string | number | null>>, prefix = ''): readonly Field[] {
  return Object.entries(values).map(([name, value]) => [prefix + name, value]);
}

/** A stored entry as if it had been read from a form in its own order, so that its pointers lead to fields. */
function asRead(entry: AssessmentEntry): ReturnType<typeof readEntry> {
  return {
    entry,
    errors: [],
    attempts: entry.walkTests.map((walk) => attemptOf(walk, entry)),
    questionnaires: entry.questionnaires.flatMap(
      ({ questionnaire }) => findQuestionnaire(questionnaire) ?? [],
    ),
    physicalTests: entry.physicalTests.flatMap(({ test }) => findPhysicalTest(test) ?? []),
  };
}

/** An entry as a text that is the same for the same content, in whatever order it was typed. */
function inOrder(entry: AssessmentEntry): string {
  const ordered = {
    ...entry,
    confirmed: [],
    walkTests: [...entry.walkTests].sort(byTestAndAttempt),
    sitToStands: [...entry.sitToStands].sort(byTest),
    questionnaires: [...entry.questionnaires].sort(byQuestionnaire),
    // A test with one measure may have been given with or without its name.
    physicalTests: [...entry.physicalTests].sort(byTest).map(({ measure, ...test }) => ({
      ...test,
      measure: test.value === null ? null : (measure ?? findPhysicalTest(test.test)?.measures[0]?.id),
    })),
  };
  return JSON.stringify(ordered, (_key, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );
}
