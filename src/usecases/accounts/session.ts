import { hashToken } from '../../auth/token.js';
import { isTouchDue } from '../../domain/account/session-life.js';
import { endSessions, findFormerSession, touchSession } from '../../storage/accounts/login-sessions.js';
import { recordEvent, recordEventOf } from '../audit/record-event.js';
import type { Actor, Context } from '../context.js';
import { notWritable } from '../not-writable.js';
import { actorOf } from './actor-of.js';
import { livingSession } from './living-session.js';
import { needsToEnrol } from './second-factor-rule.js';

/** Who a session belongs to, and what is still missing before they may work. */
export interface SignedIn {
  /**
   * `second-factor-needed`: only passSecondFactor and signOut may be called. `enrolment-needed`: only setting up a second
   * factor and signing out.
   */
  readonly kind: 'ready' | 'second-factor-needed' | 'enrolment-needed';
  readonly actor: Actor;
  readonly displayName: string;
  readonly signInName: string | null;
  readonly sessionId: string;
  readonly hasSecondFactor: boolean;
  /** False for people who sign in by a provider only. */
  readonly hasPassphrase: boolean;
}

/**
 * Whose session a secret opens; null when there is none, its time is over, or the account is suspended. That the
 * session was used is noted, at most once a minute.
 */
export async function whoseSession(context: Context, secret: string): Promise<SignedIn | null> {
  const living = await livingSession(context, context.reader, hashToken(secret));
  if (living === null) return null;
  const { account, session, isHalfOpen } = living;
  const actor = actorOf(account);
  if (actor === null) return null;
  const now = context.clock.now();
  if (isTouchDue(session, now)) await noteUse(context, session.id, now);
  const mustEnrol = !isHalfOpen && (await needsToEnrol(context.reader, account));
  return {
    kind: isHalfOpen ? 'second-factor-needed' : mustEnrol ? 'enrolment-needed' : 'ready',
    actor,
    displayName: account.displayName,
    signInName: account.signInName,
    sessionId: session.id,
    hasSecondFactor: account.hasSecondFactor,
    hasPassphrase: account.passphraseHash !== null,
  };
}

/**
 * Whose session a secret opened before it ended; null where it never opened the service, such as where the second factor
 * was never shown.
 */
export async function whoseFormerSession(context: Context, secret: string): Promise<string | null> {
  const former = await findFormerSession(context.reader, hashToken(secret));
  if (former === null) return null;
  const { account, hasPassedSecondFactor } = former;
  return account.hasSecondFactor && !hasPassedSecondFactor ? null : account.id;
}

/** While the record cannot be written, whoever is signed in goes on reading. */
async function noteUse(context: Context, sessionId: string, now: string): Promise<void> {
  try {
    await touchSession(context.db, sessionId, now);
  } catch (error) {
    if (notWritable(error) === null) throw error;
  }
}

/** Ends a session; does nothing where it has ended. */
export async function signOut(context: Context, secret: string): Promise<void> {
  await context.db.transaction().execute(async (trx) => {
    const living = await livingSession(context, trx, hashToken(secret));
    if (living === null) return;
    const { account, session } = living;
    const end = { reason: 'signed-out', now: context.clock.now(), only: session.id } as const;
    await endSessions(trx, account.id, end);
    await recordEventOf(context, trx, account, { action: 'signed-out' });
  });
}

/** Ends every session of somebody, the one in which they ask included. */
export async function signOutEverywhere(context: Context, actor: Actor): Promise<void> {
  await context.db.transaction().execute(async (trx) => {
    const now = context.clock.now();
    const ended = await endSessions(trx, actor.accountId, { reason: 'signed-out-everywhere', now });
    await recordEvent(context, trx, actor, { action: 'signed-out-everywhere', details: { ended } });
  });
}
