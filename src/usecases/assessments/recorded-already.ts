import type { Assessment } from '../../domain/assessment/assessment.js';
import { accountNames } from '../../storage/accounts/account-names.js';
import { findAssessment } from '../../storage/assessments/assessments.js';
import type { Context, TeamMember } from '../context.js';

/** An assessment that says what another one would, with the name of whoever recorded or corrected it last. */
export interface RecordedAlready {
  readonly assessment: Assessment;
  readonly byName: string;
}

/**
 * The assessment that stands in the way of an identical one, for whoever was refused it; its sheet is told to the trail.
 *
 * @returns null where it is not the team's, or was taken out of the record meanwhile
 */
export async function recordedAlready(
  { db }: Pick<Context, 'db'>,
  { teamId }: TeamMember,
  assessmentId: string,
): Promise<RecordedAlready | null> {
  const assessment = await findAssessment(db, teamId, assessmentId);
  if (assessment === null) return null;
  const names = await accountNames(db, [assessment.recordedBy]);
  return { assessment, byName: names.get(assessment.recordedBy) ?? 'Somebody of the team' };
}
