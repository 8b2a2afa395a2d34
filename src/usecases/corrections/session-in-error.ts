import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome, Refusal } from '../../domain/refusal/refusal.js';
import { checkRegister } from '../../domain/session/session.js';
import type { EnteredInError } from '../../domain/history/entered-in-error.js';
import type { Executor } from '../../storage/connection.js';
import { referralDates } from '../../storage/referrals/referral-dates.js';
import { findRegister, markSessionRow } from '../../storage/sessions/registers.js';
import type { SessionRegister } from '../../storage/sessions/registers.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import { markOf } from './mark.js';
import type { MarkRequest } from './mark.js';

/** Marks a session as entered in error, and its register with it: nobody was there. */
export async function markSessionInError(
  context: Context,
  actor: TeamMember,
  id: string,
  request: MarkRequest,
): Promise<Outcome<SessionRegister>> {
  const mark = markOf(context, actor, request.reason);
  return setMark(context, actor, id, { ...request, mark }, async (_trx, { enteredInError }) =>
    enteredInError === null ? null : { code: 'entered-in-error', what: 'session' },
  );
}

/** Restores a session; refused where what happened meanwhile speaks against its register, such as an earlier closure. */
export async function restoreSession(
  context: Context,
  actor: TeamMember,
  id: string,
  request: MarkRequest,
): Promise<Outcome<SessionRegister>> {
  return setMark(context, actor, id, { ...request, mark: null }, async (trx, former) => {
    if (former.enteredInError === null) return { code: 'not-entered-in-error', what: 'session' };
    const ids = former.attendances.map(({ referralId }) => referralId);
    const referrals = await referralDates(trx, actor.teamId, ids);
    const faults = checkRegister(former, former.attendances, referrals, context.clock.today());
    return faults.length === 0 ? null : { code: 'rules-broken', faults };
  });
}

async function setMark(
  context: Context,
  actor: TeamMember,
  id: string,
  { reason, basedOn, mark }: MarkRequest & { readonly mark: EnteredInError | null },
  check: (trx: Executor, former: SessionRegister) => Promise<Refusal | null>,
): Promise<Outcome<SessionRegister>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await findRegister(trx, actor.teamId, id);
    if (former === null) return refused({ code: 'not-found', what: 'session' });
    const { version } = former;
    const stale = await staleBase(trx, actor, { kind: 'session', id, version }, basedOn);
    const refusal = stale ?? (await check(trx, former));
    if (refusal !== null) return refused(refusal);
    const [now, { accountId }] = [context.clock.now(), actor];
    await markSessionRow(trx, { former, reason, now, accountId, mark });
    await recordEvent(context, trx, actor, {
      action: mark === null ? 'entry-restored' : 'entry-marked-in-error',
      subjectId: id,
      details: { kind: 'session', reason },
    });
    return done({ ...former, version: version + 1, enteredInError: mark });
  });
}
