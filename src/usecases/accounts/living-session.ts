import { isAlive, maySecondFactorFollow } from '../../domain/account/session-life.js';
import { findOpenSession } from '../../storage/accounts/login-sessions.js';
import type { OpenSession } from '../../storage/accounts/login-sessions.js';
import type { FullAccount } from '../../storage/accounts/accounts.js';
import type { Executor } from '../../storage/connection.js';
import type { Context } from '../context.js';

/** A session that lives, with its account. */
export interface LivingSession {
  readonly session: OpenSession;
  readonly account: FullAccount;
  /** There is a second factor, and it has not been shown in this session. */
  readonly isHalfOpen: boolean;
}

/** The session of a secret's hash; null when it has ended or its time is over, or the account is suspended. */
export async function livingSession(
  context: Context,
  db: Executor,
  hash: string,
): Promise<LivingSession | null> {
  const now = context.clock.now();
  const found = await findOpenSession(db, hash);
  if (found === null || !isAlive(found.session, now)) return null;
  const isHalfOpen = found.account.hasSecondFactor && !found.session.hasPassedSecondFactor;
  if (isHalfOpen && !maySecondFactorFollow(found.session, now)) return null;
  return { ...found, isHalfOpen };
}
