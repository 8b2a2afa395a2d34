import type { Account } from '../../storage/accounts/accounts.js';
import type { Actor } from '../context.js';

/** An account as one who acts; null where it belongs nowhere, which the record does not allow. */
export function actorOf(account: Account): Actor | null {
  const { id: accountId, role, teamId, commissionerId } = account;
  if (role === 'commissioner') return commissionerId === null ? null : { accountId, role, commissionerId };
  return teamId === null ? null : { accountId, role, teamId };
}
