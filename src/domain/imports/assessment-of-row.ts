import type {
  AssessmentEntry,
  QuestionnaireEntry,
  SitToStandEntry,
  WalkTestEntry,
} from '../assessment/assessment.js';
import { EMPTY_WALK } from '../assessment/empty-walk.js';
import { QUESTIONNAIRES, SIT_TO_STAND_TESTS, WALK_TESTS } from '../measures/registered.js';
import type { WalkTest } from '../measures/walk-test.js';
import type { NotDoneReason, Timepoint } from '../referral/closed-sets.js';
import type { Built } from './course-of-row.js';
import type { RowValues } from './row-values.js';

/** The pointer and the column of each value, gathered while an entry is built. */
type Columns = Record<string, string>;

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
  const at = (part: string): string => `${timepoint}.${part}`;
  const columns: Columns = { '/assessedOn': at('assessedOn'), '/siteId': at('site') };
  const walkTests = WALK_TESTS.flatMap((test) => walksOf(row, at, test));
  walkTests.forEach(({ walk }, index) => nameWalkColumns(columns, at, walk, index));
  const sitToStands = SIT_TO_STAND_TESTS.flatMap((test) =>
    standOf(row, at(`stand.${test.id}`), test.id, test.measure.unit === 's'),
  );
  sitToStands.forEach((stand, index) => {
    for (const field of ['', '/repetitions', '/timeS'])
      columns[`/sitToStands/${index}${field}`] = at(`stand.${stand.test}`);
  });
  const questionnaires = QUESTIONNAIRES.flatMap((each) => questionnaireOf(row, at, each));
  questionnaires.forEach((entry, index) => nameScoreColumns(columns, at, entry, index));
  const entry = {
    ...personEntry(row, at, columns),
    walkTests: walkTests.map(({ walk }) => walk),
    sitToStands,
    questionnaires,
  };
  const isEmpty =
    walkTests.length + sitToStands.length + questionnaires.length === 0 &&
    [entry.heightCm, entry.weightKg, entry.spirometry, entry.resting].every((each) => each === null);
  const assessedOn = row.date(at('assessedOn'));
  if (assessedOn === null) {
    if (isEmpty) return null;
    return {
      kind: 'missing',
      faults: [
        { columnId: at('assessedOn'), message: 'There are results, but not the date of the assessment.' },
      ],
    };
  }
  const part: AssessmentEntry = {
    timepoint,
    assessedOn,
    siteId: row.text(at('site')) ?? siteId,
    safetyScreen: 'not-recorded',
    safetyNote: null,
    safetyFindings: [],
    physicalTests: [],
    notes: null,
    confirmed: [],
    ...entry,
  };
  return { kind: 'built', built: { part, columns } };
}

function personEntry(
  row: RowValues,
  at: (part: string) => string,
  columns: Columns,
): Pick<AssessmentEntry, 'heightCm' | 'weightKg' | 'spirometry' | 'resting'> {
  const read = (pointer: string, part: string): number | null => {
    columns[pointer] = at(part);
    return row.number(at(part));
  };
  const spirometry = {
    fev1L: read('/spirometry/fev1L', 'fev1L'),
    fev1PercentPredicted: read('/spirometry/fev1PercentPredicted', 'fev1PercentPredicted'),
    fev1FvcPercent: read('/spirometry/fev1FvcPercent', 'fev1FvcPercent'),
  };
  const resting = {
    spo2Percent: read('/resting/spo2Percent', 'spo2Percent'),
    heartRateBpm: read('/resting/heartRateBpm', 'heartRateBpm'),
    systolicMmHg: read('/resting/systolicMmHg', 'systolicMmHg'),
    diastolicMmHg: read('/resting/diastolicMmHg', 'diastolicMmHg'),
  };
  return {
    heightCm: read('/heightCm', 'heightCm'),
    weightKg: read('/weightKg', 'weightKg'),
    spirometry: isNothing(spirometry) ? null : spirometry,
    resting: isNothing(resting) ? null : resting,
  };
}

function isNothing(part: Readonly<Record<string, number | null>>): boolean {
  return Object.values(part).every((each) => each === null);
}

function walksOf(
  row: RowValues,
  at: (part: string) => string,
  test: WalkTest,
): readonly { readonly walk: WalkTestEntry }[] {
  const attempts = ([1, 2] as const).filter((attempt) => row.has(at(`walk.${test.id}.${attempt}`)));
  // A second attempt without a first is the only one there was.
  return attempts.map((column, index) => {
    const id = at(`walk.${test.id}.${column}`);
    const [result, notDoneReason] = [row.number(id), row.notDone(id)];
    const walk = walkEntry(test, index === 0 ? 1 : 2, result, notDoneReason);
    if (notDoneReason !== null) return { walk };
    return {
      walk: {
        ...walk,
        speedLevel: test.records === 'endurance' ? row.number(at(`walk.${test.id}.speedLevel`)) : null,
        courseLengthM: row.number(at('walk.courseLengthM')),
        walkingAid: row.code(at('walk.walkingAid')),
        oxygenLPerMin: row.number(at('walk.oxygenLPerMin')),
      },
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

function nameWalkColumns(
  columns: Columns,
  at: (part: string) => string,
  walk: WalkTestEntry,
  index: number,
): void {
  const pointer = `/walkTests/${index}`;
  for (const field of ['', '/distanceM', '/timeS', '/attempt'])
    columns[`${pointer}${field}`] = at(`walk.${walk.test}.${walk.attempt}`);
  columns[`${pointer}/speedLevel`] = at(`walk.${walk.test}.speedLevel`);
  for (const field of ['courseLengthM', 'walkingAid', 'oxygenLPerMin'])
    columns[`${pointer}/${field}`] = at(`walk.${field}`);
}

function standOf(row: RowValues, id: string, test: string, isTimed: boolean): readonly SitToStandEntry[] {
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
  at: (part: string) => string,
  questionnaire: (typeof QUESTIONNAIRES)[number],
): readonly QuestionnaireEntry[] {
  const scores = questionnaire.measures.map((measure) => ({
    measure: measure.id,
    value: row.number(at(`score.${measure.id}`)),
    notDone: row.notDone(at(`score.${measure.id}`)),
  }));
  const typedScores = scores.flatMap(({ measure, value }) => (value === null ? [] : [{ measure, value }]));
  const reason = scores.find(({ notDone }) => notDone !== null)?.notDone ?? null;
  if (typedScores.length === 0 && reason === null) return [];
  return [
    {
      questionnaire: questionnaire.id,
      form: typedScores.length === 0 ? null : row.code(at(`form.${questionnaire.id}`)),
      items: null,
      typedScores,
      notDoneReason: typedScores.length === 0 ? reason : null,
    },
  ];
}

function nameScoreColumns(
  columns: Columns,
  at: (part: string) => string,
  entry: QuestionnaireEntry,
  index: number,
): void {
  const pointer = `/questionnaires/${index}`;
  columns[`${pointer}/form`] = at(`form.${entry.questionnaire}`);
  entry.typedScores.forEach(({ measure }, position) => {
    columns[`${pointer}/typedScores/${position}`] = at(`score.${measure}`);
    columns[`${pointer}/typedScores/${position}/value`] = at(`score.${measure}`);
  });
}
