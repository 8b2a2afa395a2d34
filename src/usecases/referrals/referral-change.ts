import type { AuditAction } from '../../domain/audit/audit-action.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import type { Patient } from '../../domain/patient/patient.js';
import type { Referral } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import { findPatient } from '../../storage/patients/patients.js';
import { findReferral } from '../../storage/referrals/referrals.js';
import type { ReferralChange } from '../../storage/referrals/referral-changes.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';

/** Free text of a referral: it stands in the record and is not told twice. */
const FREE_TEXT = ['otherConditions', 'triage', 'closure'];

/**
 * Loads, lets the step decide and write, tells the trail, and reads the referral again, all in one transaction.
 *
 * @param told what the trail is told, and the version that the change is based on
 * @param step gives null when it has written, or what it refuses
 */
export async function changeReferral(
  context: Context,
  actor: TeamMember,
  id: string,
  told: {
    readonly action: AuditAction;
    readonly basedOn: BasedOn;
    readonly reason?: string;
    /** The change is about the mark itself; any other is refused while the referral is entered in error. */
    readonly isOfTheMark?: true;
  },
  step: (trx: Executor, former: Referral, patient: Patient) => Promise<Refusal | null>,
): Promise<Outcome<Referral>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await findReferral(trx, actor.teamId, id);
    const patient = former === null ? null : await findPatient(trx, actor.teamId, former.patientId);
    if (former === null || patient === null) return refused({ code: 'not-found', what: 'referral' });
    const { version } = former;
    const stale = await staleBase(trx, actor, { kind: 'referral', id, version }, told.basedOn);
    if (stale !== null) return refused(stale);
    if (former.enteredInError !== null && told.isOfTheMark !== true) {
      return refused({ code: 'entered-in-error', what: 'referral' });
    }
    const refusal = await step(trx, former, patient);
    if (refusal !== null) return refused(refusal);
    const changed = await findReferral(trx, actor.teamId, id);
    if (changed === null) return refused({ code: 'not-found', what: 'referral' });
    const reason = told.reason === undefined ? {} : { reason: told.reason };
    await recordEvent(context, trx, actor, {
      action: told.action,
      patientId: changed.patientId,
      referralId: id,
      details: { changes: changedValues(toldOf(former), toldOf(changed), FREE_TEXT), ...reason },
    });
    return done(changed);
  });
}

/** A referral as the trail tells it: decisions and dates apart from the texts that go with them. */
function toldOf(referral: Referral): object {
  const { triage, closure, enteredInError } = referral;
  return {
    ...referral,
    triageDecision: triage?.decision,
    triagedOn: triage?.decidedOn,
    closedOn: closure?.closedOn,
    closureReason: closure?.reason,
    enteredInError: enteredInError !== null,
  };
}

/** What a step writes with: the former state is kept with the reason. */
export function changeOf(
  context: Context,
  actor: TeamMember,
  former: Referral,
  reason: string,
): ReferralChange {
  return { former, reason, now: context.clock.now(), accountId: actor.accountId };
}

/** The day against which the dates of an event are checked. */
export function dates(context: Context): { readonly today: ReturnType<Context['clock']['today']> } {
  return { today: context.clock.today() };
}
