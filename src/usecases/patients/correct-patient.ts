import { bornBeforeReceipt, checkPatient, IDENTIFYING_FIELDS } from '../../domain/patient/patient.js';
import type { Patient, PatientDetails } from '../../domain/patient/patient.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { correctPatientRow, findPatient, findPatientIdByNhsNumber } from '../../storage/patients/patients.js';
import { firstReceiptOn } from '../../storage/referrals/referral-dates.js';
import { getTeam } from '../../storage/providers/providers.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';

/** What is to be changed in a record, and why. */
export interface PatientCorrection {
  readonly changes: Partial<PatientDetails>;
  readonly reason: string;
  readonly basedOn: BasedOn;
}

/** Corrects what is held about a person; the former state stays readable. */
export async function correctPatient(
  context: Context,
  actor: TeamMember,
  id: string,
  correction: PatientCorrection,
): Promise<Outcome<Patient>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await findPatient(trx, actor.teamId, id);
    if (former === null) return refused({ code: 'not-found', what: 'patient' });
    const stale = await staleBase(
      trx,
      actor,
      { kind: 'patient', id, version: former.version },
      correction.basedOn,
    );
    if (stale !== null) return refused(stale);
    if (former.mergedInto !== null) {
      return refused({ code: 'patient-merged', existingId: former.mergedInto });
    }
    const team = await getTeam(trx, actor.teamId);
    const checked = checkPatient(
      { ...former, ...correction.changes },
      { range: team.kind, today: context.clock.today() },
    );
    if (checked.faults.length > 0) return refused({ code: 'rules-broken', faults: checked.faults });
    const faults = bornBeforeReceipt(checked.details.bornOn, await firstReceiptOn(trx, id));
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const { nhsNumber } = checked.details;
    if (nhsNumber !== null && nhsNumber !== former.nhsNumber) {
      const existingId = await findPatientIdByNhsNumber(trx, actor.teamId, nhsNumber);
      if (existingId !== null) return refused({ code: 'patient-already-registered', existingId });
    }
    await correctPatientRow(trx, {
      former,
      details: checked.details,
      reason: correction.reason,
      now: context.clock.now(),
      accountId: actor.accountId,
    });
    await recordEvent(context, trx, actor, {
      action: 'patient-corrected',
      patientId: id,
      details: {
        changes: changedValues(former, { ...former, ...checked.details }, IDENTIFYING_FIELDS),
        reason: correction.reason,
      },
    });
    return done({ ...former, ...checked.details, version: former.version + 1 });
  });
}
