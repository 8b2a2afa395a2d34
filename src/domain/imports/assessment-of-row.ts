import type {
  AssessmentEntry,
  QuestionnaireEntry,
  SitToStandEntry,
  WalkTestEntry,
} from '../assessment/assessment.js';
import { EMPTY_WALK } from '../assessment/empty-walk.js';
import type { WalkTest } from '../measures/walk-test.js';
import type { NotDoneReason, Timepoint } from '../referral/closed-sets.js';
import { assessmentColumnIds } from './assessment-column-ids.js';
import type { AssessmentColumnIds } from './assessment-column-ids.js';
import type { Built } from './course-of-row.js';
import type { RowValues } from './row-values.js';

/**
 * The assessment of a row at a timepoint; null where the row says nothing of it.
 *
 * Walks in a sheet are taken as done on a measured course. What a sheet does not hold is not recorded.
 *
 * @param siteId site of the referral, where the row names none for the assessment
 */
export function assessmentOf(
  row: RowValues,
  timepoint: Timepoint,
  siteId: string,
): Built<AssessmentEntry> | null {
  const ids = assessmentColumnIds(timepoint);
  const entry = {
    ...personEntry(row, ids),
    walkTests: ids.walks.flatMap((walk) => walksOf(row, ids, walk)),
    sitToStands: ids.stands.flatMap((stand) => standOf(row, stand)),
    questionnaires: ids.questionnaires.flatMap((each) => questionnaireOf(row, each)),
  };
  const assessedOn = row.date(ids.assessedOn);
  if (assessedOn === null) {
    if (isEmpty(entry)) return null;
    return {
      kind: 'missing',
      faults: [
        { columnId: ids.assessedOn, message: 'There are results, but not the date of the assessment.' },
      ],
    };
  }
  const part: AssessmentEntry = {
    timepoint,
    assessedOn,
    siteId: row.text(ids.site) ?? siteId,
    safetyScreen: 'not-recorded',
    safetyNote: null,
    safetyFindings: [],
    physicalTests: [],
    notes: null,
    confirmed: [],
    ...entry,
  };
  return { kind: 'built', built: { part, from: timepoint } };
}

type PersonEntry = Pick<AssessmentEntry, 'heightCm' | 'weightKg' | 'spirometry' | 'resting'>;

function isEmpty(
  entry: PersonEntry & Pick<AssessmentEntry, 'walkTests' | 'sitToStands' | 'questionnaires'>,
): boolean {
  return (
    entry.walkTests.length + entry.sitToStands.length + entry.questionnaires.length === 0 &&
    [entry.heightCm, entry.weightKg, entry.spirometry, entry.resting].every((each) => each === null)
  );
}

function personEntry(row: RowValues, { fields }: AssessmentColumnIds): PersonEntry {
  const spirometry = {
    fev1L: row.number(fields.fev1L),
    fev1PercentPredicted: row.number(fields.fev1PercentPredicted),
    fev1FvcPercent: row.number(fields.fev1FvcPercent),
  };
  const resting = {
    spo2Percent: row.number(fields.spo2Percent),
    heartRateBpm: row.number(fields.heartRateBpm),
    systolicMmHg: row.number(fields.systolicMmHg),
    diastolicMmHg: row.number(fields.diastolicMmHg),
  };
  return {
    heightCm: row.number(fields.heightCm),
    weightKg: row.number(fields.weightKg),
    spirometry: isNothing(spirometry) ? null : spirometry,
    resting: isNothing(resting) ? null : resting,
  };
}

function isNothing(part: Readonly<Record<string, number | null>>): boolean {
  return Object.values(part).every((each) => each === null);
}

function walksOf(
  row: RowValues,
  { walkConditions }: AssessmentColumnIds,
  { test, attempts, speedLevel }: AssessmentColumnIds['walks'][number],
): readonly WalkTestEntry[] {
  // A second attempt without a first is the only one there was.
  return attempts
    .filter((id) => row.has(id))
    .map((id, index) => {
      const notDoneReason = row.notDone(id);
      const walk = walkEntry(test, index === 0 ? 1 : 2, row.number(id), notDoneReason);
      if (notDoneReason !== null) return walk;
      return {
        ...walk,
        speedLevel: test.records === 'endurance' ? row.number(speedLevel) : null,
        courseLengthM: row.number(walkConditions.courseLengthM),
        walkingAid: row.code(walkConditions.walkingAid),
        oxygenLPerMin: row.number(walkConditions.oxygenLPerMin),
      };
    });
}

/** One attempt with its result and nothing else. */
export function walkEntry(
  test: WalkTest,
  attempt: 1 | 2,
  result: number | null,
  notDoneReason: NotDoneReason | null,
): WalkTestEntry {
  const isTimed = test.records === 'endurance';
  return {
    ...EMPTY_WALK,
    test: test.id,
    attempt,
    distanceM: isTimed ? null : result,
    timeS: isTimed ? result : null,
    notDoneReason,
  };
}

function standOf(
  row: RowValues,
  { test, isTimed, id }: AssessmentColumnIds['stands'][number],
): readonly SitToStandEntry[] {
  if (!row.has(id)) return [];
  return [standEntry(test, isTimed, row.number(id), row.notDone(id))];
}

/** One sit-to-stand test with its result and nothing else. */
export function standEntry(
  test: string,
  isTimed: boolean,
  result: number | null,
  notDoneReason: NotDoneReason | null,
): SitToStandEntry {
  return {
    test,
    place: 'course',
    repetitions: isTimed ? null : result,
    timeS: isTimed ? result : null,
    handsUsed: null,
    chairHeightCm: null,
    notDoneReason,
  };
}

function questionnaireOf(
  row: RowValues,
  { questionnaire, form, scores }: AssessmentColumnIds['questionnaires'][number],
): readonly QuestionnaireEntry[] {
  const said = scores.filter(({ id }) => row.has(id));
  const typedScores = said.flatMap(({ measure, id }) => {
    const value = row.number(id);
    return value === null ? [] : [{ measure, value }];
  });
  const notDone = said.find(({ id }) => row.notDone(id) !== null);
  const reason = notDone === undefined ? null : row.notDone(notDone.id);
  if (typedScores.length === 0 && reason === null) return [];
  return [
    {
      questionnaire,
      form: typedScores.length === 0 ? null : row.code(form),
      items: null,
      typedScores,
      notDoneReason: typedScores.length === 0 ? reason : null,
    },
  ];
}
