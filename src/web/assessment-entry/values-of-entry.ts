import type {
  AssessmentEntry,
  PhysicalTestEntry,
  QuestionnaireEntry,
  SitToStandEntry,
  WalkTestEntry,
} from '../../domain/assessment/assessment.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { findPhysicalTest, findQuestionnaire } from '../../domain/measures/catalogue.js';
import type { TestPlace } from '../../domain/referral/closed-sets.js';
import { typedDate } from '../forms/date-entry.js';
import type { FormValues } from '../forms/form-values.js';
import {
  AID_NOT_RECORDED,
  conditionField,
  confirmField,
  ENDURANCE_TEST,
  formField,
  itemField,
  MEASURED_IN_WALK,
  MORE_WALKS,
  notDoneField,
  notRecordedField,
  partField,
  placeField,
  RESULT_OF_WALK,
  scoreField,
  SHARED_WALK_FIELDS,
  STANDS,
  standTestField,
  unableField,
  valueField,
} from './field-names.js';
import type { AttemptName, StandName } from './field-names.js';
import { fieldOf } from './field-of.js';
import { readEntry, shownValue } from './read-entry.js';
import type { ReadEntry } from './read-entry.js';
import { inOrder } from './same-entry.js';
import { isFurther } from './walk-conditions.js';

type Field = readonly [name: string, value: string | number | readonly string[] | null];

/**
 * What stands in the fields of the sheet for an assessment of the record, with what was confirmed.
 *
 * @returns null where that would not be read as the assessment again, such as with an answer that is not in use any more: then
 * it must not be corrected there, since what is not on the page would be lost
 */
export function valuesOfEntry(entry: AssessmentEntry, today: PlainDate): FormValues | null {
  const attempts = attemptsOf(entry.walkTests);
  const first = entry.walkTests[attempts.indexOf('walk1')];
  const [place = 'course'] = [first, ...entry.sitToStands, ...entry.physicalTests].flatMap(
    (test) => test?.place ?? [],
  );
  const fields = [
    ...beforeTests(entry),
    ...entry.walkTests.flatMap((walk, index) => walkFields(walk, attempts[index] ?? 'walk1', first)),
    ['place', place] as const,
    ...entry.sitToStands.flatMap((stand, index) => standFields(stand, STANDS[index] ?? 'sitToStand', place)),
    ...entry.questionnaires.flatMap(questionnaireFields),
    ...entry.physicalTests.flatMap((test) => physicalFields(test, place)),
    ['notes', entry.notes] as const,
  ];
  const values = new Map<string, readonly string[]>(
    fields.flatMap(([name, value]) => (value === null ? [] : [[name, listed(value)] as const])),
  );
  values.set('safetyFindings', entry.safetyFindings);
  const read = readEntry(values, entry.timepoint, today);
  if (read.errors.length > 0 || inOrder(read.entry) !== inOrder(entry)) return null;
  for (const pointer of entry.confirmed) {
    const field = fieldOf(asRead(entry, attempts, values), pointer);
    values.set(confirmField(field), [shownValue(values, field)]);
  }
  return values;
}

function listed(value: string | number | readonly string[]): readonly string[] {
  return typeof value === 'object' ? value : [String(value)];
}

function beforeTests(entry: AssessmentEntry): readonly Field[] {
  const { day, month, year } = typedDate(entry.assessedOn);
  const { siteId, heightCm, weightKg, safetyScreen, safetyNote } = entry;
  return [
    ['assessedOn-day', day],
    ['assessedOn-month', month],
    ['assessedOn-year', year],
    ...named({ siteId, heightCm, weightKg, safetyScreen, safetyNote }),
    ...named({ ...entry.spirometry }),
    ...named({ ...entry.resting }),
  ];
}

/**
 * Where each walk stands on the sheet: those of one test first, an endurance walk beside them, and what is left at the end.
 */
function attemptsOf(walks: readonly WalkTestEntry[]): readonly AttemptName[] {
  const main = (walks.find(({ test }) => test !== ENDURANCE_TEST) ?? walks[0])?.test;
  const further = [...MORE_WALKS];
  return walks.map(({ test, attempt }) => {
    if (test === main) return attempt === 1 ? 'walk1' : 'walk2';
    if (test === ENDURANCE_TEST && attempt === 1) return 'endurance';
    return further.shift() ?? 'more1';
  });
}

function walkFields(
  walk: WalkTestEntry,
  at: AttemptName,
  first: WalkTestEntry | undefined,
): readonly Field[] {
  const isMain = at === 'walk1' || at === 'walk2';
  return [
    ['walkTest', isMain ? walk.test : null],
    ...(isFurther(at) ? named({ test: walk.test, attempt: walk.attempt }, `${at}.`) : []),
    ...conditionsOf(walk, at, first),
    ...[...RESULT_OF_WALK, ...MEASURED_IN_WALK].map((name) => [`${at}.${name}`, walk[name]] as const),
    [`${at}.stopReason`, walk.stopReason],
    [notDoneField(at), walk.notDoneReason],
  ];
}

/** The conditions of a walk; beside the first one, only what is not as in it. */
function conditionsOf(
  walk: WalkTestEntry,
  at: AttemptName,
  first: WalkTestEntry | undefined,
): readonly Field[] {
  if (at === 'walk1') return SHARED_WALK_FIELDS.map((name) => [name, walk[name]]);
  if (isFurther(at)) return SHARED_WALK_FIELDS.map((name) => [`${at}.${name}`, walk[name]]);
  const own = SHARED_WALK_FIELDS.filter((name) => walk[name] !== first?.[name]);
  const missing = own.filter((name) => walk[name] === null);
  return [
    ...own.map((name) => [`${at}.${name}`, walk[name]] as const),
    [notRecordedField(at), missing.filter((name) => name !== 'walkingAid')],
    [`${at}.walkingAid`, missing.includes('walkingAid') ? AID_NOT_RECORDED : null],
  ];
}

function standFields(stand: SitToStandEntry, at: StandName, place: TestPlace): readonly Field[] {
  const { test, repetitions, timeS, chairHeightCm, handsUsed, notDoneReason } = stand;
  return [
    [standTestField(at), test],
    [placeField(at), stand.place === place ? null : stand.place],
    ...named({ repetitions, timeS, chairHeightCm, notDoneReason }, `${at}.`),
    [`${at}.handsUsed`, handsUsed === null ? null : handsUsed ? 'yes' : 'no'],
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

function physicalFields(done: PhysicalTestEntry, place: TestPlace): readonly Field[] {
  const { test, conditions, parts, measure, value, notDoneReason } = done;
  const onlyMeasure = findPhysicalTest(test)?.measures[0]?.id ?? '';
  return [
    [placeField(`p.${test}`), done.place === place ? null : done.place],
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
function asRead(entry: AssessmentEntry, attempts: readonly AttemptName[], form: FormValues): ReadEntry {
  return {
    form,
    entry,
    errors: [],
    attempts,
    stands: STANDS,
    questionnaires: entry.questionnaires.flatMap(
      ({ questionnaire }) => findQuestionnaire(questionnaire) ?? [],
    ),
    physicalTests: entry.physicalTests.flatMap(({ test }) => findPhysicalTest(test) ?? []),
  };
}
