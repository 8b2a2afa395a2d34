import { INVITATION_PURPOSES } from '../../domain/account/account.js';
import type { InvitationPurpose } from '../../domain/account/account.js';
import type { Executor } from '../connection.js';
import { memberOf } from '../row-mapping.js';
import { accountFromRow } from './accounts.js';
import type { FullAccount } from './accounts.js';

export interface StoredInvitation {
  readonly id: string;
  readonly purpose: InvitationPurpose;
  readonly expiresAt: string;
}

/** Stores an invitation by the hash of its secret. */
export async function insertInvitation(
  db: Executor,
  invitation: StoredInvitation & {
    readonly accountId: string;
    readonly hash: string;
    readonly createdBy: string;
    readonly now: string;
  },
): Promise<void> {
  await db
    .insertInto('invitation')
    .values({
      id: invitation.id,
      account_id: invitation.accountId,
      purpose: invitation.purpose,
      token_hash: invitation.hash,
      created_by: invitation.createdBy,
      created_at: invitation.now,
      expires_at: invitation.expiresAt,
      used_at: null,
      revoked_at: null,
    })
    .execute();
}

/** An invitation that can be used at an instant, with its account, which is active; null where there is none. */
export async function findOpenInvitation(
  db: Executor,
  hash: string,
  now: string,
): Promise<{ readonly invitation: StoredInvitation; readonly account: FullAccount } | null> {
  const row = await db
    .selectFrom('invitation')
    .innerJoin('account', 'account.id', 'invitation.account_id')
    .selectAll('account')
    .select(['invitation.id as invitation_id', 'invitation.purpose', 'invitation.expires_at'])
    .where('invitation.token_hash', '=', hash)
    .where('invitation.used_at', 'is', null)
    .where('invitation.revoked_at', 'is', null)
    .where('invitation.expires_at', '>', now)
    .where('account.status', '=', 'active')
    .executeTakeFirst();
  if (row === undefined) return null;
  const purpose = memberOf(INVITATION_PURPOSES, row.purpose);
  return {
    invitation: { id: row.invitation_id, purpose, expiresAt: row.expires_at },
    account: accountFromRow(row),
  };
}

/** Until when the open invitation of each account may be used, by account id. */
export async function openInvitationsOf(
  db: Executor,
  accountIds: readonly string[],
  now: string,
): Promise<ReadonlyMap<string, StoredInvitation>> {
  if (accountIds.length === 0) return new Map();
  const rows = await db
    .selectFrom('invitation')
    .select(['id', 'account_id', 'purpose', 'expires_at'])
    .where('account_id', 'in', accountIds)
    .where('used_at', 'is', null)
    .where('revoked_at', 'is', null)
    .where('expires_at', '>', now)
    .execute();
  return new Map(
    rows.map((row) => [
      row.account_id,
      { id: row.id, purpose: memberOf(INVITATION_PURPOSES, row.purpose), expiresAt: row.expires_at },
    ]),
  );
}

/** Notes that an invitation was used: it is not used again. */
export async function useInvitation(db: Executor, id: string, now: string): Promise<void> {
  await db.updateTable('invitation').set({ used_at: now }).where('id', '=', id).execute();
}

/** Takes back every invitation of an account that has not been used. */
export async function revokeInvitations(db: Executor, accountId: string, now: string): Promise<void> {
  await db
    .updateTable('invitation')
    .set({ revoked_at: now })
    .where('account_id', '=', accountId)
    .where('used_at', 'is', null)
    .where('revoked_at', 'is', null)
    .execute();
}
