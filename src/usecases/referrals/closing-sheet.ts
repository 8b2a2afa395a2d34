import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Patient } from '../../domain/patient/patient.js';
import type { Referral } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { findPatient } from '../../storage/patients/patients.js';
import { findReferral } from '../../storage/referrals/referrals.js';
import { recordRead } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { lastEventOn } from './last-event.js';

/** What stands around the closing of a referral. */
export interface ClosingSheet {
  readonly patient: Patient;
  readonly referral: Referral;
  /** The closure cannot be before it; null where nobody has been seen. */
  readonly lastEventOn: PlainDate | null;
}

/** Opens the closing of a referral, closed already or not; the trail is told. */
export async function openClosingSheet(
  context: Context,
  actor: TeamMember,
  referralId: string,
): Promise<Outcome<ClosingSheet>> {
  const { db } = context;
  const referral = await findReferral(db, actor.teamId, referralId);
  const patient = referral === null ? null : await findPatient(db, actor.teamId, referral.patientId);
  if (referral === null || patient === null) return refused({ code: 'not-found', what: 'referral' });
  await recordRead(context, actor, { action: 'referral-read', patientId: patient.id, referralId });
  return done({ patient, referral, lastEventOn: await lastEventOn(db, referralId) });
}
