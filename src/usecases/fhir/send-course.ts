import { courseOf } from '../../domain/pathway/course.js';
import { stageOfCourse } from '../../domain/pathway/stage.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { courseBundle } from '../../fhir/course/course-bundle.js';
import { assessmentsOfReferral } from '../../storage/assessments/assessments.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { findPatient } from '../../storage/patients/patients.js';
import { commissionersOfTeam, getTeam, sitesOfTeam } from '../../storage/providers/providers.js';
import { findReferral } from '../../storage/referrals/referrals.js';
import { attendedSessions } from '../../storage/sessions/sessions.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';

export const FHIR_MEDIA_TYPE = 'application/fhir+json';

/**
 * One person's course as a bundle of FHIR R4 resources, as at today; the trail is told.
 *
 * @returns JSON text; refused where the referral is not the team's, or was entered in error
 */
export async function sendCourse(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<string>> {
  const { db, clock } = context;
  const { teamId } = actor;
  const asAt = clock.today();
  const referral = await findReferral(db, teamId, referralId);
  const patient = referral === null ? null : await findPatient(db, teamId, referral.patientId);
  if (referral === null || patient === null) return refused({ code: 'not-found', what: 'referral' });
  const { settings } = await currentSettings(db, teamId);
  const [facts] = await loadReferralFacts(db, teamId, [referralId], settings);
  const course = facts === undefined ? null : courseOf(facts, asAt);
  if (course === null) return refused({ code: 'entered-in-error', what: 'referral' });
  const text = courseBundle({
    patient,
    referral,
    stage: stageOfCourse(course),
    asAt,
    writtenAt: clock.now(),
    teamName: (await getTeam(db, teamId)).name,
    siteNames: namesById(await sitesOfTeam(db, teamId)),
    commissionerNames: namesById(await commissionersOfTeam(db, teamId)),
    assessments: await assessmentsOfReferral(db, referralId),
    sessions: await attendedSessions(db, referralId),
    attendance: course.attendance,
  });
  const details = { format: 'fhir-r4' };
  await recordRead(context, actor, { action: 'course-exported', patientId: patient.id, referralId, details });
  return done(text);
}

function namesById(
  places: readonly { readonly id: string; readonly name: string }[],
): ReadonlyMap<string, string> {
  return new Map(places.map(({ id, name }) => [id, name]));
}
