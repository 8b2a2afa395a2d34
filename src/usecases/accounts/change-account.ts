import type { Role } from '../../domain/account/role.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import {
  accountsAroundTeam,
  findAccount,
  isLeadLeft,
  updateAccount,
} from '../../storage/accounts/accounts.js';
import type { AccountChange, FullAccount } from '../../storage/accounts/accounts.js';
import { openInvitationsOf, revokeInvitations } from '../../storage/accounts/invitations.js';
import { endSessions } from '../../storage/accounts/login-sessions.js';
import type { Executor } from '../../storage/connection.js';
import { recordEvent, recordRead } from '../audit/record-event.js';
import { accountStates } from '../../storage/history/account-states.js';
import { meanwhileSince } from '../../domain/history/history.js';
import type { BasedOn } from '../history/based-on.js';
import type { Context, TeamMember } from '../context.js';
import { accountSeenBy } from './account-of-team.js';
import { viewOf } from './account-view.js';
import type { AccountView } from './account-view.js';

/** The accounts of the lead's team and of the commissioners who pay for it, by name. */
export async function listAccounts(context: Context, actor: TeamMember): Promise<readonly AccountView[]> {
  const accounts = await accountsAroundTeam(context.reader, actor.teamId);
  const ids = accounts.map(({ id }) => id);
  const invitations = await openInvitationsOf(context.reader, ids, context.clock.now());
  await recordRead(context, actor, { action: 'accounts-listed', details: { count: accounts.length } });
  return accounts.map((account) => viewOf(account, invitations.get(account.id) ?? null));
}

/** One account of the lead's team, or of a commissioner who pays for it. */
export async function getAccount(
  context: Context,
  actor: TeamMember,
  accountId: string,
): Promise<Outcome<AccountView>> {
  const account = await accountSeenBy(context.reader, actor, accountId);
  if (account === null) return refused({ code: 'not-found', what: 'account' });
  await recordRead(context, actor, { action: 'account-read', subjectId: accountId });
  return done(await presentView(context, context.reader, accountId));
}

/**
 * Changes name, role or status of an account, based on the version that the lead has seen.
 *
 * A lead changes neither role nor status of their own; a team keeps one active lead who can sign in; a commissioner
 * stays one. Whoever is suspended is signed out everywhere and loses open invitations. Tokens follow a lower role at once.
 */
export async function changeAccount(
  context: Context,
  actor: TeamMember,
  request: {
    readonly accountId: string;
    readonly basedOn: BasedOn;
    readonly changes: Partial<AccountChange>;
    readonly reason: string | null;
  },
): Promise<Outcome<AccountView>> {
  const { accountId, basedOn, reason } = request;
  return context.db.transaction().execute(async (trx) => {
    const account = await accountSeenBy(trx, actor, accountId);
    if (account === null) return refused({ code: 'not-found', what: 'account' });
    if (!basedOn.includes(account.version)) {
      const states = await accountStates(trx, account, actor.teamId);
      return refused({
        code: 'changed-meanwhile',
        meanwhile: meanwhileSince(states, Math.max(...basedOn)),
      });
    }
    const { displayName, role, status } = { ...account, ...request.changes };
    const change: AccountChange = { displayName, role, status };
    const refusal = await refusalOf(context, trx, actor, account, change);
    if (refusal !== null) return refusal;
    const now = context.clock.now();
    await updateAccount(trx, account, change);
    if (status === 'suspended') {
      await endSessions(trx, accountId, { reason: 'suspended', now });
      await revokeInvitations(trx, accountId, now);
    }
    const before = { displayName: account.displayName, role: account.role, status: account.status };
    await recordEvent(context, trx, actor, {
      action: 'account-changed',
      subjectId: accountId,
      details: { changes: changedValues(before, change, []), ...told(reason) },
    });
    return done(await presentView(context, trx, accountId));
  });
}

async function refusalOf(
  context: Context,
  trx: Executor,
  actor: TeamMember,
  account: FullAccount,
  change: AccountChange,
) {
  const isSame = change.role === account.role && change.status === account.status;
  if (isSame) return null;
  if (account.id === actor.accountId) return refused({ code: 'own-account' });
  if (isCommissioner(account.role) !== isCommissioner(change.role)) {
    return refused({ code: 'rules-broken', faults: [OTHER_SCOPE] });
  }
  const leaves = account.role === 'lead' && (change.role !== 'lead' || change.status !== 'active');
  if (!leaves) return null;
  const left = { teamId: actor.teamId, without: account.id, now: context.clock.now() };
  return (await isLeadLeft(trx, left)) ? null : refused({ code: 'last-lead' });
}

/** An account as it stands now. */
export async function presentView(context: Context, trx: Executor, id: string): Promise<AccountView> {
  const account = await findAccount(trx, { id });
  if (account === null) throw new Error('An account that was stored is not there.');
  const invitations = await openInvitationsOf(trx, [id], context.clock.now());
  return viewOf(account, invitations.get(id) ?? null);
}

/** A reason as the trail is told of it. */
function told(reason: string | null): { readonly reason?: string } {
  return reason === null ? {} : { reason };
}

function isCommissioner(role: Role): boolean {
  return role === 'commissioner';
}

const OTHER_SCOPE: Fault = {
  pointer: '/role',
  code: 'other-scope',
  message:
    'A commissioner cannot become a member of the team, nor the other way round: make another account.',
};
