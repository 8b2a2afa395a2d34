import type { SessionEnd } from '../../domain/account/account.js';
import type { SessionTimes } from '../../domain/account/session-life.js';
import type { Executor } from '../connection.js';
import { accountFromRow } from './accounts.js';
import type { FullAccount } from './accounts.js';

/** A session that has not been ended; whether it still lives is the domain's to say. */
export interface OpenSession extends SessionTimes {
  readonly id: string;
  readonly hasPassedSecondFactor: boolean;
}

/** Stores a new session by the hash of its secret. */
export async function insertLoginSession(
  db: Executor,
  session: {
    readonly id: string;
    readonly accountId: string;
    readonly hash: string;
    readonly now: string;
    readonly expiresAt: string;
    readonly hasPassedSecondFactor: boolean;
  },
): Promise<void> {
  await db
    .insertInto('login_session')
    .values({
      id: session.id,
      account_id: session.accountId,
      token_hash: session.hash,
      second_factor_passed: session.hasPassedSecondFactor ? 1 : 0,
      created_at: session.now,
      last_used_at: session.now,
      expires_at: session.expiresAt,
      ended_at: null,
      ended_reason: null,
    })
    .execute();
}

/** The session of a secret with its account; null where there is none that is open, or the account is suspended. */
export async function findOpenSession(
  db: Executor,
  hash: string,
): Promise<{ readonly session: OpenSession; readonly account: FullAccount } | null> {
  const row = await db
    .selectFrom('login_session')
    .innerJoin('account', 'account.id', 'login_session.account_id')
    .selectAll('account')
    .select([
      'login_session.id as session_id',
      'login_session.second_factor_passed',
      'login_session.created_at as session_created_at',
      'login_session.last_used_at',
      'login_session.expires_at',
    ])
    .where('login_session.token_hash', '=', hash)
    .where('login_session.ended_at', 'is', null)
    .where('account.status', '=', 'active')
    .executeTakeFirst();
  if (row === undefined) return null;
  const session: OpenSession = {
    id: row.session_id,
    hasPassedSecondFactor: row.second_factor_passed === 1,
    createdAt: row.session_created_at,
    lastUsedAt: row.last_used_at,
    expiresAt: row.expires_at,
  };
  return { session, account: accountFromRow(row) };
}

/** Whose session a secret opened once, however it ended; null where there was none or the account is suspended. */
export async function findFormerSession(
  db: Executor,
  hash: string,
): Promise<{ readonly hasPassedSecondFactor: boolean; readonly account: FullAccount } | null> {
  const row = await db
    .selectFrom('login_session')
    .innerJoin('account', 'account.id', 'login_session.account_id')
    .selectAll('account')
    .select('login_session.second_factor_passed')
    .where('login_session.token_hash', '=', hash)
    .where('account.status', '=', 'active')
    .executeTakeFirst();
  if (row === undefined) return null;
  return { hasPassedSecondFactor: row.second_factor_passed === 1, account: accountFromRow(row) };
}

/** Notes that a session was used. */
export async function touchSession(db: Executor, id: string, now: string): Promise<void> {
  await db
    .updateTable('login_session')
    .set({ last_used_at: now })
    .where('id', '=', id)
    .where('ended_at', 'is', null)
    .execute();
}

/** Notes that the second factor was shown in a session. */
export async function passSession(db: Executor, id: string): Promise<void> {
  await db.updateTable('login_session').set({ second_factor_passed: 1 }).where('id', '=', id).execute();
}

/**
 * Ends the open sessions of an account, or one of them, or all but one.
 *
 * @returns how many were open
 */
export async function endSessions(
  db: Executor,
  accountId: string,
  end: {
    readonly reason: SessionEnd;
    readonly now: string;
    readonly only?: string;
    readonly without?: string;
  },
): Promise<number> {
  let query = db
    .updateTable('login_session')
    .set({ ended_at: end.now, ended_reason: end.reason })
    .where('account_id', '=', accountId)
    .where('ended_at', 'is', null);
  if (end.only !== undefined) query = query.where('id', '=', end.only);
  if (end.without !== undefined) query = query.where('id', '<>', end.without);
  const { numUpdatedRows } = await query.executeTakeFirstOrThrow();
  return Number(numUpdatedRows);
}
