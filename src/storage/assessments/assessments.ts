import type { Selectable } from 'kysely';
import type { Assessment, CheckedAssessment } from '../../domain/assessment/assessment.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { AssessmentTable } from '../assessment-tables.js';
import { composedAmong, composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import type { Executor } from '../connection.js';
import { inErrorColumns } from '../in-error.js';
import { optionalDate } from '../row-mapping.js';
import { rowsInto } from '../rows-into.js';
import { assessmentColumns, testRows } from './new-rows.js';
import { assessmentFromRows } from './row-mapper.js';

/** The current version of a team's assessment; null when absent or of another team. */
export async function findAssessment(db: Executor, teamId: string, id: string): Promise<Assessment | null> {
  const rows = await versionsInOrder(db)
    .where('team_id', '=', teamId)
    .where('id', '=', id)
    .where('superseded_at', 'is', null)
    .execute();
  const found = await withTests(db, rows);
  return found[0] ?? null;
}

/** The current assessments of a referral that stand, by date, earliest first. */
export async function assessmentsOfReferral(
  db: Executor,
  referralId: string,
): Promise<readonly Assessment[]> {
  return withTests(db, await currentOfReferral(db, { referralId }));
}

/** The day of the last assessment of a referral that stands, follow-ups left aside; null where there is none. */
export async function lastAssessedOn(db: Executor, referralId: string): Promise<PlainDate | null> {
  const [row] = await lastAssessed(db, { referralId });
  return optionalDate(row?.assessed_on ?? null);
}

const lastAssessed = composedOnce((db, value: ValueOf<{ referralId: string }>) =>
  db
    .selectFrom('assessment')
    .select(({ fn }) => fn.max<string | null>('assessed_on').as('assessed_on'))
    .where('referral_id', '=', value('referralId'))
    .where('timepoint', '!=', 'follow-up')
    .where('superseded_at', 'is', null)
    .where('entered_in_error_at', 'is', null),
);

/** The assessments of a referral that were entered in error, by date, earliest first. */
export async function assessmentsInError(db: Executor, referralId: string): Promise<readonly Assessment[]> {
  const rows = await versionsInOrder(db)
    .where('referral_id', '=', referralId)
    .where('superseded_at', 'is', null)
    .where('entered_in_error_at', 'is not', null)
    .execute();
  return withTests(db, rows);
}

/** Every version of a team's assessment, the current one last; empty when absent or of another team. */
export async function versionsOfAssessment(
  db: Executor,
  teamId: string,
  id: string,
): Promise<readonly Assessment[]> {
  const rows = await versionsInOrder(db).where('team_id', '=', teamId).where('id', '=', id).execute();
  const versions = await withTests(db, rows);
  return [...versions].sort((a, b) => a.version - b.version);
}

/** Stores a new version of an assessment with all its tests. */
export async function insertAssessment(
  db: Executor,
  assessment: {
    readonly id: string;
    readonly version: number;
    readonly versionId: string;
    readonly teamId: string;
    readonly referralId: string;
    readonly checked: CheckedAssessment;
    readonly correctionReason: string | null;
    readonly enteredInError: EnteredInError | null;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await intoAssessment(db, [
    {
      version_id: assessment.versionId,
      id: assessment.id,
      version: assessment.version,
      superseded_at: null,
      correction_reason: assessment.correctionReason,
      team_id: assessment.teamId,
      referral_id: assessment.referralId,
      recorded_at: assessment.now,
      recorded_by: assessment.accountId,
      ...inErrorColumns(assessment.enteredInError),
      ...assessmentColumns(assessment.checked.entry),
    },
  ]);
  const rows = testRows(assessment.versionId, assessment.checked);
  await intoWalkTest(db, rows.walkTests);
  await intoSitToStand(db, rows.sitToStands);
  await intoQuestionnaire(db, rows.questionnaires);
  await intoScore(db, rows.scores);
  await intoPhysicalTest(db, rows.physicalTests);
}

const intoAssessment = rowsInto('assessment');
const intoWalkTest = rowsInto('walk_test');
const intoSitToStand = rowsInto('sit_to_stand');
const intoQuestionnaire = rowsInto('questionnaire');
const intoScore = rowsInto('score');
const intoPhysicalTest = rowsInto('physical_test');

/** Marks a version as superseded; its values stay readable. */
export async function supersedeAssessment(db: Executor, versionId: string, now: string): Promise<void> {
  await db
    .updateTable('assessment')
    .set({ superseded_at: now })
    .where('version_id', '=', versionId)
    .execute();
}

/** Earliest first; those of one day in the order in which they were first entered, which their ids have. */
function versionsInOrder(db: Executor) {
  return db.selectFrom('assessment').selectAll().orderBy('assessed_on').orderBy('id').orderBy('version');
}

const currentOfReferral = composedOnce((db, value: ValueOf<{ referralId: string }>) =>
  versionsInOrder(db)
    .where('referral_id', '=', value('referralId'))
    .where('superseded_at', 'is', null)
    .where('entered_in_error_at', 'is', null),
);

const walkTestsAmong = composedAmong((db, ids) =>
  db.selectFrom('walk_test').selectAll().where('assessment_version_id', 'in', ids),
);
const sitToStandsAmong = composedAmong((db, ids) =>
  db.selectFrom('sit_to_stand').selectAll().where('assessment_version_id', 'in', ids),
);
const questionnairesAmong = composedAmong((db, ids) =>
  db.selectFrom('questionnaire').selectAll().where('assessment_version_id', 'in', ids),
);
const scoresAmong = composedAmong((db, ids) =>
  db.selectFrom('score').selectAll().where('assessment_version_id', 'in', ids),
);
const physicalTestsAmong = composedAmong((db, ids) =>
  db.selectFrom('physical_test').selectAll().where('assessment_version_id', 'in', ids),
);

async function withTests(
  db: Executor,
  assessments: readonly Selectable<AssessmentTable>[],
): Promise<readonly Assessment[]> {
  if (assessments.length === 0) return [];
  const ids = assessments.map((row) => row.version_id);
  const walkTests = await walkTestsAmong(db, ids);
  const sitToStands = await sitToStandsAmong(db, ids);
  const questionnaires = await questionnairesAmong(db, ids);
  const scores = await scoresAmong(db, ids);
  const physicalTests = await physicalTestsAmong(db, ids);
  return assessments.map((assessment) => {
    const isOf = (row: { assessment_version_id: string }): boolean =>
      row.assessment_version_id === assessment.version_id;
    return assessmentFromRows({
      assessment,
      walkTests: walkTests.filter(isOf),
      sitToStands: sitToStands.filter(isOf),
      questionnaires: questionnaires.filter(isOf),
      scores: scores.filter(isOf),
      physicalTests: physicalTests.filter(isOf),
    });
  });
}
