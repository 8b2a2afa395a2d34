import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { clearSecondFactor } from '../../storage/accounts/credentials.js';
import { endSessions } from '../../storage/accounts/login-sessions.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { accountSeenBy } from './account-of-team.js';
import type { AccountView } from './account-view.js';
import { presentView } from './change-account.js';

/** Takes the second factor of somebody else away, such as when the telephone was lost; their sessions end. */
export async function resetSecondFactor(
  context: Context,
  actor: TeamMember,
  request: { readonly accountId: string; readonly reason: string },
): Promise<Outcome<AccountView>> {
  const { accountId: subjectId, reason } = request;
  if (subjectId === actor.accountId) return refused({ code: 'own-account' });
  return context.db.transaction().execute(async (trx) => {
    const account = await accountSeenBy(trx, actor, subjectId);
    if (account === null) return refused({ code: 'not-found', what: 'account' });
    await clearSecondFactor(trx, subjectId);
    await endSessions(trx, subjectId, { reason: 'second-factor-changed', now: context.clock.now() });
    await recordEvent(context, trx, actor, {
      action: 'second-factor-removed',
      subjectId,
      details: { reason },
    });
    return done(await presentView(context, trx, subjectId));
  });
}

/** Ends every session of somebody, such as when a computer was stolen. Tokens stay: they are revoked one by one. */
export async function signOutAccount(
  context: Context,
  actor: TeamMember,
  request: { readonly accountId: string; readonly reason: string },
): Promise<Outcome<{ readonly endedSessions: number }>> {
  const { accountId: subjectId, reason } = request;
  return context.db.transaction().execute(async (trx) => {
    const account = await accountSeenBy(trx, actor, subjectId);
    if (account === null) return refused({ code: 'not-found', what: 'account' });
    const now = context.clock.now();
    const ended = await endSessions(trx, subjectId, { reason: 'signed-out-everywhere', now });
    await recordEvent(context, trx, actor, {
      action: 'signed-out-everywhere',
      subjectId,
      details: { ended, reason },
    });
    return done({ endedSessions: ended });
  });
}
