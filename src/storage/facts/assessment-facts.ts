import type {
  PhysicalResult,
  PhysicalTestEntry,
  Score,
  SitToStandEntry,
} from '../../domain/assessment/assessment.js';
import { resultsOf } from '../../domain/assessment/results.js';
import type { TestedWalk } from '../../domain/assessment/results.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { AssessmentFacts } from '../../domain/cohort/referral-facts.js';
import { TIMEPOINTS } from '../../domain/referral/closed-sets.js';
import {
  physicalResultFromRow,
  physicalTestFromRow,
  scoreFromRow,
  sitToStandFromRow,
  testedWalkFromRow,
  TESTED_WALK_COLUMNS,
} from '../assessments/row-mapper.js';
import type { Executor } from '../connection.js';
import { memberOf, scaledDown, storedDate } from '../row-mapping.js';
import { dateOfInstant } from './date-of-instant.js';
import { firstEntriesOf } from './first-entries.js';
import { groupBy, mapGroups } from './grouping.js';
import { idsInStatement } from '../ids-in-statement.js';

/**
 * The current assessments of some referrals with their results, by referral, earliest first; those of one day in the
 * order in which they were first entered, which their ids have, so that a correction changes nothing about which counts.
 */
export async function loadAssessmentFacts(
  db: Executor,
  referralIds: readonly string[],
): Promise<ReadonlyMap<string, readonly AssessmentFacts[]>> {
  const assessments = await db
    .selectFrom('assessment')
    .select([
      'version_id',
      'id',
      'version',
      'referral_id',
      'timepoint',
      'assessed_on',
      'height_mm',
      'weight_g',
      'confirmed_fields',
      'recorded_at',
    ])
    .where('referral_id', 'in', idsInStatement(referralIds))
    .where('superseded_at', 'is', null)
    .where('entered_in_error_at', 'is', null)
    .orderBy('assessed_on')
    .orderBy('id')
    .execute();
  const firstEntries = await firstEntriesOf(
    db,
    assessments.filter(({ version }) => version > 1).map(({ id }) => id),
  );
  const versions = idsInStatement(assessments.map((row) => row.version_id));
  const walks = groupBy(
    await db
      .selectFrom('walk_test')
      .select(TESTED_WALK_COLUMNS)
      .where('assessment_version_id', 'in', versions)
      .orderBy('attempt')
      .execute(),
    (row) => row.assessment_version_id,
  );
  const stands = groupBy(
    await db.selectFrom('sit_to_stand').selectAll().where('assessment_version_id', 'in', versions).execute(),
    (row) => row.assessment_version_id,
  );
  const questionnaires = groupBy(
    await db
      .selectFrom('questionnaire')
      .select(['assessment_version_id', 'instrument', 'form', 'not_done_reason'])
      .where('assessment_version_id', 'in', versions)
      .execute(),
    (row) => row.assessment_version_id,
  );
  const scores = groupBy(
    await db.selectFrom('score').selectAll().where('assessment_version_id', 'in', versions).execute(),
    (row) => row.assessment_version_id,
  );
  const physicalTests = groupBy(
    await db.selectFrom('physical_test').selectAll().where('assessment_version_id', 'in', versions).execute(),
    (row) => row.assessment_version_id,
  );
  return mapGroups(
    groupBy(assessments, (row) => row.referral_id),
    (row) =>
      assessmentFacts(row, enteredOn(row, firstEntries), {
        walkTests: (walks.get(row.version_id) ?? []).map(testedWalkFromRow),
        sitToStands: (stands.get(row.version_id) ?? []).map(sitToStandFromRow),
        questionnaires: (questionnaires.get(row.version_id) ?? []).map((found) => ({
          questionnaire: found.instrument,
          form: found.form,
          notDoneReason: found.not_done_reason,
        })),
        scores: (scores.get(row.version_id) ?? []).map(scoreFromRow),
        physicalTests: (physicalTests.get(row.version_id) ?? []).map(physicalTestFromRow),
        physicalResults: (physicalTests.get(row.version_id) ?? []).flatMap(physicalResultFromRow),
      }),
  );
}

function assessmentFacts(
  row: {
    id: string;
    timepoint: string;
    assessed_on: string;
    height_mm: number | null;
    weight_g: number | null;
    confirmed_fields: string;
  },
  enteredOn: PlainDate | null,
  tests: {
    walkTests: readonly TestedWalk[];
    sitToStands: readonly SitToStandEntry[];
    questionnaires: readonly { questionnaire: string; form: string | null; notDoneReason: string | null }[];
    scores: readonly Score[];
    physicalTests: readonly PhysicalTestEntry[];
    physicalResults: readonly PhysicalResult[];
  },
): AssessmentFacts {
  return {
    assessmentId: row.id,
    timepoint: memberOf(TIMEPOINTS, row.timepoint),
    assessedOn: storedDate(row.assessed_on),
    enteredOn,
    confirmedValues: countOf(row.confirmed_fields),
    heightCm: scaledDown(row.height_mm, 10),
    weightKg: scaledDown(row.weight_g, 1000),
    results: resultsOf({ entry: tests, scores: tests.scores, physicalResults: tests.physicalResults }),
    notDone: [
      ...tests.walkTests.map((walk) => ({ testId: walk.test, reason: walk.notDoneReason })),
      ...tests.sitToStands.map((stand) => ({ testId: stand.test, reason: stand.notDoneReason })),
      ...tests.physicalTests.map((test) => ({ testId: test.test, reason: test.notDoneReason })),
      ...tests.questionnaires.map((found) => ({ testId: found.questionnaire, reason: found.notDoneReason })),
    ].flatMap(({ testId, reason }) => (reason === null ? [] : [{ testId, reason }])),
  };
}

/** The day on which it was entered; null for a corrected one. One that was only marked and restored stands as it was. */
function enteredOn(
  row: { readonly id: string; readonly version: number; readonly recorded_at: string },
  firstEntries: ReadonlyMap<string, string>,
): PlainDate | null {
  const instant = row.version === 1 ? row.recorded_at : firstEntries.get(row.id);
  return instant === undefined ? null : dateOfInstant(instant);
}

/** Length of a list stored as JSON; most are empty. */
function countOf(list: string): number {
  if (list === '[]') return 0;
  const items: unknown = JSON.parse(list);
  return Array.isArray(items) ? items.length : 0;
}
