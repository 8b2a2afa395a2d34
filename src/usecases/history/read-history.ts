import { historyOf } from '../../domain/history/history.js';
import type { HistoryEntry } from '../../domain/history/history.js';
import { changesFor } from '../../domain/history/withheld.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { findAssessment } from '../../storage/assessments/assessments.js';
import { courseOfReferral } from '../../storage/referrals/referral-dates.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { statesOf } from './based-on.js';
import type { VersionedKind } from './based-on.js';

/** Whose record it is, as far as the trail can be told. */
interface Owner {
  readonly patientId?: string;
  readonly referralId?: string;
  readonly subjectId?: string;
}

/**
 * The history of a record of the member's team, first version first: what each version changed, who made it, when and
 * why. An administrator is shown no score.
 *
 * @param id of the record; of the team for settings
 */
export async function readHistory(
  context: Context,
  actor: TeamMember,
  kind: VersionedKind,
  id: string,
): Promise<Outcome<readonly HistoryEntry[]>> {
  const states = await statesOf(context.db, actor, kind, id);
  const owner = states.length === 0 ? null : await ownerOf(context, actor, kind, id);
  if (owner === null) {
    return refused({ code: 'not-found', what: kind === 'settings' ? 'page' : kind });
  }
  await recordRead(context, actor, { action: 'history-read', ...owner, details: { kind } });
  return done(
    historyOf(states).map((entry) => ({ ...entry, changes: changesFor(actor.role, entry.changes) })),
  );
}

async function ownerOf(
  context: Context,
  { teamId }: TeamMember,
  kind: VersionedKind,
  id: string,
): Promise<Owner | null> {
  switch (kind) {
    case 'patient':
      return { patientId: id };
    case 'referral': {
      const course = await courseOfReferral(context.db, teamId, id);
      return course === null ? null : { patientId: course.patientId, referralId: id };
    }
    case 'assessment': {
      const assessment = await findAssessment(context.db, teamId, id);
      if (assessment === null) return null;
      const { referralId } = assessment;
      const course = await courseOfReferral(context.db, teamId, referralId);
      return course === null ? null : { patientId: course.patientId, referralId, subjectId: id };
    }
    case 'session':
      return { subjectId: id };
    case 'settings':
      return {};
  }
}
