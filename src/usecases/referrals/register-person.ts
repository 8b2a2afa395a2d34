import type { PatientDetails } from '../../domain/patient/patient.js';
import type { Referral, ReferralDetails } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import type { Context, TeamMember } from '../context.js';
import { judgeNewPatient, storeNewPatient } from '../patients/register-patient.js';
import { faultsOfNewReferral, storeNewReferral } from './register-referral.js';

/**
 * Registers a new person with their referral: both, or neither.
 *
 * @returns refused with every fault of both, the pointers under `/patient` and `/referral`
 */
export async function registerPersonWithReferral(
  context: Context,
  actor: TeamMember,
  entry: { readonly patient: PatientDetails; readonly referral: ReferralDetails },
): Promise<Outcome<Referral>> {
  return context.db.transaction().execute(async (trx) => {
    const judged = await judgeNewPatient(context, trx, actor, entry.patient);
    if (judged.kind === 'refused' && judged.refusal.code !== 'rules-broken') return judged;
    const { bornOn } = entry.patient;
    const faults = within(
      '/referral',
      await faultsOfNewReferral(context, trx, actor, bornOn, entry.referral),
    );
    if (judged.kind === 'refused') {
      const own = judged.refusal.code === 'rules-broken' ? judged.refusal.faults : [];
      return refused({ code: 'rules-broken', faults: [...within('/patient', own), ...faults] });
    }
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const patient = await storeNewPatient(context, trx, actor, judged.value);
    return done(await storeNewReferral(context, trx, actor, patient.id, entry.referral));
  });
}

function within(part: string, faults: readonly Fault[]): readonly Fault[] {
  return faults.map((fault) => ({ ...fault, pointer: part + fault.pointer }));
}
