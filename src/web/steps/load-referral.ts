import type { Patient } from '../../domain/patient/patient.js';
import { done } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Context, TeamMember } from '../../usecases/context.js';
import { getPatient } from '../../usecases/patients/find-patients.js';
import { getReferral } from '../../usecases/referrals/list-referrals.js';
import type { StagedReferral } from '../../usecases/referrals/list-referrals.js';

/** A referral with its person and its stage. */
export interface ReferralOfPerson extends StagedReferral {
  readonly patient: Patient;
}

/** A referral of the member's team with its person. */
export async function loadReferral(
  context: Context,
  actor: TeamMember,
  id: string,
): Promise<Outcome<ReferralOfPerson>> {
  const read = await getReferral(context, actor, id);
  if (read.kind === 'refused') return read;
  const person = await getPatient(context, actor, read.value.referral.patientId);
  return person.kind === 'refused' ? person : done({ ...read.value, patient: person.value });
}

/** Address of a page of a referral. */
export interface ReferralParams {
  readonly Params: { readonly referralId: string };
}
