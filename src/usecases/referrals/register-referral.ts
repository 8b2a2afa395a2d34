import { checkReferral } from '../../domain/referral/referral.js';
import type { Referral, ReferralDetails } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Executor } from '../../storage/connection.js';
import { findPatient } from '../../storage/patients/patients.js';
import { findOpenReferralId, insertReferral } from '../../storage/referrals/referrals.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { checkPlaces } from './check-places.js';

/** Registers a referral of a known person; a second one while the first is open is refused, naming the open one. */
export async function registerReferral(
  context: Context,
  actor: TeamMember,
  patientId: string,
  details: ReferralDetails,
): Promise<Outcome<Referral>> {
  return context.db.transaction().execute(async (trx) => {
    const patient = await findPatient(trx, actor.teamId, patientId);
    if (patient === null) {
      const message = 'There is no such patient.';
      return refused({
        code: 'rules-broken',
        faults: [{ pointer: '/patientId', code: 'not-found', message }],
      });
    }
    if (patient.mergedInto !== null) {
      return refused({ code: 'patient-merged', existingId: patient.mergedInto });
    }
    const faults = await faultsOfNewReferral(context, trx, actor, patient.bornOn, details);
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const existingId = await findOpenReferralId(trx, patientId);
    if (existingId !== null) return refused({ code: 'referral-already-open', existingId });
    return done(await storeNewReferral(context, trx, actor, patientId, details));
  });
}

/** Every fault of a new referral of somebody. */
export async function faultsOfNewReferral(
  context: Context,
  trx: Executor,
  actor: TeamMember,
  bornOn: PlainDate,
  details: ReferralDetails,
): Promise<readonly Fault[]> {
  return [
    ...checkReferral(details, { today: context.clock.today(), bornOn }),
    ...(await checkPlaces(trx, actor.teamId, details)),
  ];
}

/** Stores a referral without faults, and tells the trail. */
export async function storeNewReferral(
  context: Context,
  trx: Executor,
  actor: TeamMember,
  patientId: string,
  details: ReferralDetails,
): Promise<Referral> {
  const id = context.newId();
  const { teamId, accountId } = actor;
  await insertReferral(trx, { id, teamId, patientId, details, now: context.clock.now(), accountId });
  await recordEvent(context, trx, actor, {
    action: 'referral-registered',
    patientId,
    referralId: id,
    details: { changes: changedValues({}, details, ['otherConditions']) },
  });
  const nothingYet = { triage: null, offers: [], closure: null, enteredInError: null };
  return { id, patientId, version: 1, ...details, ...nothingYet };
}
