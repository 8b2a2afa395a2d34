import { hashToken } from '../auth/token.js';
import { findAccountByToken } from '../storage/accounts/accounts.js';
import type { Actor, Context } from './context.js';

/** Who stands behind an API token; null when the token is unknown, expired or revoked, or the account is suspended. */
export async function actorByToken(context: Context, secret: string): Promise<Actor | null> {
  // On the connection that only reads: to learn who asks, nobody waits until somebody else has written.
  const account = await findAccountByToken(context.reader, hashToken(secret), context.clock.now());
  if (account === null) return null;
  const { id: accountId, role, teamId, commissionerId } = account;
  if (role === 'commissioner') return commissionerId === null ? null : { accountId, role, commissionerId };
  return teamId === null ? null : { accountId, role, teamId };
}
