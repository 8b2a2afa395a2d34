import type { Assessment, CheckedAssessment } from '../../domain/assessment/assessment.js';
import type { Executor } from '../connection.js';
import { insertRows } from '../insert-rows.js';
import { assessmentColumns, testRows } from './new-rows.js';
import { assessmentFromRows } from './row-mapper.js';

/** The current version of a team's assessment; null when absent or of another team. */
export async function findAssessment(db: Executor, teamId: string, id: string): Promise<Assessment | null> {
  const found = await loadAssessments(db, (query) =>
    query.where('team_id', '=', teamId).where('id', '=', id).where('superseded_at', 'is', null),
  );
  return found[0] ?? null;
}

/** The current assessments of a referral by date, earliest first. */
export async function assessmentsOfReferral(
  db: Executor,
  referralId: string,
): Promise<readonly Assessment[]> {
  return loadAssessments(db, (query) =>
    query.where('referral_id', '=', referralId).where('superseded_at', 'is', null),
  );
}

/** Every version of a team's assessment, the current one last; empty when absent or of another team. */
export async function versionsOfAssessment(
  db: Executor,
  teamId: string,
  id: string,
): Promise<readonly Assessment[]> {
  const versions = await loadAssessments(db, (query) =>
    query.where('team_id', '=', teamId).where('id', '=', id),
  );
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
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await insertRows(db, 'assessment', [
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
      ...assessmentColumns(assessment.checked.entry),
    },
  ]);
  const rows = testRows(assessment.versionId, assessment.checked);
  await insertRows(db, 'walk_test', rows.walkTests);
  await insertRows(db, 'sit_to_stand', rows.sitToStands);
  await insertRows(db, 'questionnaire', rows.questionnaires);
  await insertRows(db, 'score', rows.scores);
  await insertRows(db, 'physical_test', rows.physicalTests);
}

/** Marks a version as superseded; its values stay readable. */
export async function supersedeAssessment(db: Executor, versionId: string, now: string): Promise<void> {
  await db
    .updateTable('assessment')
    .set({ superseded_at: now })
    .where('version_id', '=', versionId)
    .execute();
}

type AssessmentQuery = ReturnType<typeof selectAssessments>;

async function loadAssessments(
  db: Executor,
  narrow: (query: AssessmentQuery) => AssessmentQuery,
): Promise<readonly Assessment[]> {
  const assessments = await narrow(selectAssessments(db))
    .orderBy('assessed_on')
    .orderBy('version_id')
    .execute();
  if (assessments.length === 0) return [];
  const ids = assessments.map((row) => row.version_id);
  const walkTests = await db
    .selectFrom('walk_test')
    .selectAll()
    .where('assessment_version_id', 'in', ids)
    .execute();
  const sitToStands = await db
    .selectFrom('sit_to_stand')
    .selectAll()
    .where('assessment_version_id', 'in', ids)
    .execute();
  const questionnaires = await db
    .selectFrom('questionnaire')
    .selectAll()
    .where('assessment_version_id', 'in', ids)
    .execute();
  const scores = await db.selectFrom('score').selectAll().where('assessment_version_id', 'in', ids).execute();
  const physicalTests = await db
    .selectFrom('physical_test')
    .selectAll()
    .where('assessment_version_id', 'in', ids)
    .execute();
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

function selectAssessments(db: Executor) {
  return db.selectFrom('assessment').selectAll();
}
