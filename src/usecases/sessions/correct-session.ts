import { changedValues } from '../../domain/audit/changed-values.js';
import { notTooFarAhead } from '../../domain/referral/referral.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { checkMovedTo } from '../../domain/session/session.js';
import type { SessionDetails } from '../../domain/session/session.js';
import { referralDates } from '../../storage/referrals/referral-dates.js';
import { correctSessionRow, findRegister } from '../../storage/sessions/registers.js';
import type { SessionRegister } from '../../storage/sessions/registers.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';
import { checkPlaces } from '../referrals/check-places.js';

/** Corrects the day, the site or the kind of a session; the former state stays readable with its register. */
export async function correctSession(
  context: Context,
  actor: TeamMember,
  id: string,
  correction: {
    readonly changes: Partial<SessionDetails>;
    readonly reason: string;
    readonly basedOn: BasedOn;
  },
): Promise<Outcome<SessionRegister>> {
  const { reason, basedOn } = correction;
  return context.db.transaction().execute(async (trx) => {
    const former = await findRegister(trx, actor.teamId, id);
    if (former === null) return refused({ code: 'not-found', what: 'session' });
    const { version, attendances } = former;
    const stale = await staleBase(trx, actor, { kind: 'session', id, version }, basedOn);
    if (stale !== null) return refused(stale);
    if (former.enteredInError !== null) return refused({ code: 'entered-in-error', what: 'session' });
    const corrected = { ...former, ...correction.changes };
    const today = context.clock.today();
    const ids = attendances.map(({ referralId }) => referralId);
    const referrals = await referralDates(trx, actor.teamId, ids);
    const faults = [
      ...(await checkPlaces(trx, actor.teamId, corrected)),
      ...notTooFarAhead('/heldOn', corrected.heldOn, today),
      ...checkMovedTo(corrected.heldOn, attendances, referrals, today),
    ];
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const [now, { accountId }] = [context.clock.now(), actor];
    await correctSessionRow(trx, { former, reason, now, accountId, details: corrected });
    await recordEvent(context, trx, actor, {
      action: 'session-corrected',
      subjectId: id,
      details: { changes: changedValues(former, corrected, []), reason },
    });
    return done({ ...corrected, version: version + 1 });
  });
}
