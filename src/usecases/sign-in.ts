import { hashToken } from '../auth/token.js';
import { findAccountByToken } from '../storage/accounts/tokens.js';
import { actorOf } from './accounts/actor-of.js';
import type { Actor, Context } from './context.js';

/** Who stands behind an API token; null when the token is unknown, expired or revoked, or the account is suspended. */
export async function actorByToken(context: Context, secret: string): Promise<Actor | null> {
  // On the connection that only reads: to learn who asks, nobody waits until somebody else has written.
  const account = await findAccountByToken(context.reader, hashToken(secret), context.clock.now());
  return account === null ? null : actorOf(account);
}
