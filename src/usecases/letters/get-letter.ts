import { courseOf } from '../../domain/pathway/course.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { gpLetter } from '../../reports/letters/gp-letter.js';
import type { Letter, LetterKind } from '../../reports/letters/letter-model.js';
import { patientLetter } from '../../reports/letters/patient-letter.js';
import { findPatient } from '../../storage/patients/patients.js';
import { getTeam } from '../../storage/providers/providers.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { loadOutcomes, whyNoOutcomes } from '../reports/load-outcomes.js';

/**
 * A letter about one person, built from the record as at today; nothing of it is stored.
 *
 * @returns refused where the referral is not there, was registered in error, or the letter would go to a person who died
 */
export async function getLetter(
  context: Context,
  actor: TeamMember,
  referralId: string,
  kind: LetterKind,
): Promise<Outcome<Letter>> {
  const loaded = await loadOutcomes(context, actor, referralId);
  const course = loaded === null ? null : courseOf(loaded.facts, context.clock.today());
  const patient =
    loaded === null ? null : await findPatient(context.db, actor.teamId, loaded.facts.patientId);
  if (loaded === null || course === null || patient === null) {
    return refused(await whyNoOutcomes(context, actor, referralId));
  }
  const closedFor = course.facts.closure?.reason;
  if (closedFor === 'registered-in-error') return refused({ code: 'no-letter', why: closedFor });
  if (closedFor === 'died' && kind === 'patient') return refused({ code: 'no-letter', why: closedFor });
  const team = await getTeam(context.db, actor.teamId);
  await recordRead(context, actor, {
    action: 'letter-read',
    patientId: patient.id,
    referralId,
    details: { letter: kind },
  });
  const { givenName, familyName, bornOn, nhsNumber } = patient;
  const person = { givenName, familyName, bornOn, nhsNumber };
  const input = { person, teamName: team.name, course, outcomes: loaded.outcomes };
  return done(kind === 'gp' ? gpLetter(input) : patientLetter(input));
}
