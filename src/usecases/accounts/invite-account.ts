import { makeToken } from '../../auth/token.js';
import { INVITATION_LIFE_S } from '../../domain/account/account.js';
import type { InvitationPurpose } from '../../domain/account/account.js';
import type { TeamRole } from '../../domain/account/role.js';
import { checkSignInName, normaliseSignInName } from '../../domain/account/sign-in-name.js';
import { laterBy } from '../../domain/calendar/instant.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import { findAccount, insertAccount } from '../../storage/accounts/accounts.js';
import { storeSignInName } from '../../storage/accounts/credentials.js';
import { insertInvitation, revokeInvitations } from '../../storage/accounts/invitations.js';
import type { StoredInvitation } from '../../storage/accounts/invitations.js';
import type { Executor } from '../../storage/connection.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { accountSeenBy, paysFor } from './account-of-team.js';
import { viewOf } from './account-view.js';
import type { AccountView } from './account-view.js';

/** Somebody who is to have an account. */
export interface NewAccount {
  readonly displayName: string;
  readonly signInName: string;
  readonly belonging:
    { readonly role: TeamRole } | { readonly role: 'commissioner'; readonly commissionerId: string };
}

/** An account with the secret of its invitation link, which is shown this once and stored as a hash. */
export interface Invited {
  readonly account: AccountView;
  readonly invitationSecret: string;
}

/** Makes an account in the lead's team, or of a commissioner who pays for it, and an invitation to choose a passphrase. */
export async function inviteAccount(
  context: Context,
  actor: TeamMember,
  wanted: NewAccount,
): Promise<Outcome<Invited>> {
  const signInName = normaliseSignInName(wanted.signInName);
  const faults = checkSignInName('/signInName', signInName);
  if (faults.length > 0) return refused({ code: 'rules-broken', faults });
  const { belonging, displayName } = wanted;
  const commissionerId = belonging.role === 'commissioner' ? belonging.commissionerId : null;
  const teamId = belonging.role === 'commissioner' ? null : actor.teamId;
  const { role } = belonging;
  return context.db.transaction().execute(async (trx) => {
    if (commissionerId !== null && !(await paysFor(trx, actor, commissionerId))) {
      return refused({ code: 'rules-broken', faults: [UNKNOWN_COMMISSIONER] });
    }
    if ((await findAccount(trx, { signInName })) !== null) return refused({ code: 'sign-in-name-taken' });
    const id = context.newId();
    const now = context.clock.now();
    await insertAccount(trx, { id, teamId, commissionerId, role, displayName, signInName, now });
    const { secret, invitation } = await invite(context, trx, actor, { accountId: id, purpose: 'join' });
    await recordEvent(context, trx, actor, {
      action: 'account-invited',
      subjectId: id,
      details: { role, commissionerId, displayName, signInName, expiresAt: invitation.expiresAt },
    });
    return done({ account: await viewById(trx, id, invitation), invitationSecret: secret });
  });
}

/**
 * Makes a new invitation for an account and takes former ones back: to join where nobody has chosen a passphrase yet,
 * else to choose a new one. The present passphrase holds until the invitation is used.
 *
 * @param request a sign-in name where the account has none yet
 */
export async function renewInvitation(
  context: Context,
  actor: TeamMember,
  request: { readonly accountId: string; readonly signInName: string | null },
): Promise<Outcome<Invited>> {
  const { accountId } = request;
  if (accountId === actor.accountId) return refused({ code: 'own-account' });
  return context.db.transaction().execute(async (trx) => {
    const account = await accountSeenBy(trx, actor, accountId);
    if (account === null) return refused({ code: 'not-found', what: 'account' });
    if (account.status === 'suspended') return refused({ code: 'rules-broken', faults: [SUSPENDED] });
    const named = await nameAccount(trx, account, request.signInName);
    if (named.kind === 'refused') return named;
    const purpose = account.passphraseHash === null ? 'join' : 'reset';
    await revokeInvitations(trx, accountId, context.clock.now());
    const { secret, invitation } = await invite(context, trx, actor, { accountId, purpose });
    await recordEvent(context, trx, actor, {
      action: 'invitation-renewed',
      subjectId: accountId,
      details: { purpose, signInName: named.value, expiresAt: invitation.expiresAt },
    });
    return done({ account: await viewById(trx, accountId, invitation), invitationSecret: secret });
  });
}

/** The sign-in name of an account, given to it now where it had none. */
async function nameAccount(
  trx: Executor,
  account: { readonly id: string; readonly signInName: string | null },
  wanted: string | null,
): Promise<Outcome<string>> {
  const signInName = wanted === null ? account.signInName : normaliseSignInName(wanted);
  if (signInName === null) return refused({ code: 'rules-broken', faults: [NAME_NEEDED] });
  if (signInName === account.signInName) return done(signInName);
  if (account.signInName !== null) return refused({ code: 'rules-broken', faults: [NAME_STAYS] });
  const faults = checkSignInName('/signInName', signInName);
  if (faults.length > 0) return refused({ code: 'rules-broken', faults });
  if ((await findAccount(trx, { signInName })) !== null) return refused({ code: 'sign-in-name-taken' });
  await storeSignInName(trx, account.id, signInName);
  return done(signInName);
}

async function invite(
  context: Context,
  trx: Executor,
  actor: TeamMember,
  { accountId, purpose }: { readonly accountId: string; readonly purpose: InvitationPurpose },
): Promise<{ readonly secret: string; readonly invitation: StoredInvitation }> {
  const now = context.clock.now();
  const { secret, hash } = makeToken('invitation');
  const invitation = { id: context.newId(), purpose, expiresAt: laterBy(now, INVITATION_LIFE_S[purpose]) };
  await insertInvitation(trx, { ...invitation, accountId, hash, createdBy: actor.accountId, now });
  return { secret, invitation };
}

async function viewById(trx: Executor, id: string, invitation: StoredInvitation): Promise<AccountView> {
  const account = await findAccount(trx, { id });
  if (account === null) throw new Error('An account that was stored is not there.');
  return viewOf(account, invitation);
}

const UNKNOWN_COMMISSIONER: Fault = {
  pointer: '/commissionerId',
  code: 'unknown-commissioner',
  message: 'Choose a commissioner who pays for the team.',
};
const SUSPENDED: Fault = {
  pointer: '',
  code: 'account-suspended',
  message: 'The account is suspended: make it active before you invite the person.',
};
const NAME_NEEDED: Fault = {
  pointer: '/signInName',
  code: 'sign-in-name-needed',
  message: 'The account has no sign-in name yet: choose one.',
};
const NAME_STAYS: Fault = {
  pointer: '/signInName',
  code: 'sign-in-name-stays',
  message: 'The account has another sign-in name, and it stays.',
};
