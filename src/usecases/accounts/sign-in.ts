import { isPassphraseOf } from '../../auth/passphrase-hash.js';
import { stepOfCode } from '../../auth/second-factor.js';
import { hashKey, hashToken, makeToken } from '../../auth/token.js';
import { normalisePassphrase } from '../../domain/account/passphrase.js';
import { SESSION_LONGEST_S } from '../../domain/account/session-life.js';
import { normaliseSignInName } from '../../domain/account/sign-in-name.js';
import { epochMs, laterBy } from '../../domain/calendar/instant.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { findAccount } from '../../storage/accounts/accounts.js';
import type { FullAccount } from '../../storage/accounts/accounts.js';
import { storeSecondFactorStep } from '../../storage/accounts/credentials.js';
import { insertLoginSession, passSession } from '../../storage/accounts/login-sessions.js';
import type { Executor } from '../../storage/connection.js';
import { recordEventOf } from '../audit/record-event.js';
import type { Context } from '../context.js';
import { confirmationKeys, giveBack, signInKeys, takeAttempt } from './attempts.js';
import { livingSession } from './living-session.js';
import { needsToEnrol } from './second-factor-rule.js';

/** What stands between a right passphrase and the work. */
export type NextStep = 'second-factor' | 'enrol-second-factor' | 'ready';

/** A new session. The secret goes into a cookie and nowhere else; it is stored as a hash. */
export interface NewSession {
  readonly sessionSecret: string;
  readonly next: NextStep;
}

/** What somebody typed in order to sign in. */
export interface SignInAttempt {
  readonly signInName: string;
  readonly passphrase: string;
  /** Address of the network; null where it is not known. Only a hash of it is kept. */
  readonly address: string | null;
}

/**
 * Signs somebody in by name and passphrase.
 *
 * An account that is not there, is suspended, or has no passphrase costs the same work and gets the same answer as a
 * wrong passphrase: `sign-in-refused`. After several wrong attempts by the name or from the address: `sign-in-delayed`.
 */
export async function signIn(context: Context, attempt: SignInAttempt): Promise<Outcome<NewSession>> {
  const name = normaliseSignInName(attempt.signInName);
  const details = attempt.address === null ? {} : { addressHash: hashKey('address', attempt.address) };
  const begun = await context.db.transaction().execute(async (trx) => {
    const taken = await takeAttempt(context, trx, signInKeys(name, attempt.address));
    const account = await findAccount(trx, { signInName: name });
    if (taken.kind === 'delayed') {
      await recordEventOf(context, trx, account, { action: 'sign-in-delayed', details });
    }
    return { taken, account };
  });
  const { taken, account } = begun;
  if (taken.kind === 'delayed') {
    return refused({ code: 'sign-in-delayed', retryAfterSeconds: taken.retryAfterSeconds });
  }
  const passphrase = normalisePassphrase(attempt.passphrase);
  // Outside of any transaction: the work takes tens of milliseconds, and every writer would wait.
  const matches = await isPassphraseOf(account?.passphraseHash ?? null, passphrase);
  return context.db.transaction().execute(async (trx) => {
    const present = await findAccount(trx, { signInName: name });
    const isSame = present !== null && present.passphraseHash === account?.passphraseHash;
    if (!matches || !isSame || present.status !== 'active') {
      await recordEventOf(context, trx, present, { action: 'sign-in-refused', details });
      return refused({ code: 'sign-in-refused' });
    }
    await giveBack(trx, taken);
    return done(await openSession(context, trx, present, { method: 'passphrase', ...details }));
  });
}

/** Opens a session of an account whose holder has proved who they are. */
export async function openSession(
  context: Context,
  trx: Executor,
  account: FullAccount,
  details: { readonly method: 'passphrase' | 'provider' | 'invitation'; readonly addressHash?: string },
): Promise<NewSession> {
  const now = context.clock.now();
  const { secret, hash } = makeToken('session');
  await insertLoginSession(trx, {
    id: context.newId(),
    accountId: account.id,
    hash,
    now,
    expiresAt: laterBy(now, SESSION_LONGEST_S),
    hasPassedSecondFactor: false,
  });
  const next = await nextStep(trx, account);
  await recordEventOf(context, trx, account, { action: 'signed-in', details: { ...details, next } });
  return { sessionSecret: secret, next };
}

async function nextStep(trx: Executor, account: FullAccount): Promise<NextStep> {
  if (account.hasSecondFactor) return 'second-factor';
  return (await needsToEnrol(trx, account)) ? 'enrol-second-factor' : 'ready';
}

/**
 * Takes the code of the second factor; a code is taken once.
 *
 * @returns refused as `session-over` where the session has ended, `sign-in-delayed` after several wrong codes, and
 *   `rules-broken` with the pointer `/code` for a wrong one
 */
export async function passSecondFactor(
  context: Context,
  attempt: { readonly sessionSecret: string; readonly code: string },
): Promise<Outcome<null>> {
  return context.db.transaction().execute(async (trx) => {
    const found = await livingSession(context, trx, hashToken(attempt.sessionSecret));
    if (found === null) return refused({ code: 'session-over' });
    const { account, session } = found;
    if (session.hasPassedSecondFactor || account.secondFactor === null || !account.hasSecondFactor)
      return done(null);
    const taken = await takeAttempt(context, trx, confirmationKeys(account.id));
    if (taken.kind === 'delayed') {
      await recordEventOf(context, trx, account, { action: 'sign-in-delayed', details: {} });
      return refused({ code: 'sign-in-delayed', retryAfterSeconds: taken.retryAfterSeconds });
    }
    const { secret, lastStep } = account.secondFactor;
    const step = stepOfCode(secret, attempt.code, epochMs(context.clock.now()));
    if (step === null || (lastStep !== null && step <= lastStep)) {
      await recordEventOf(context, trx, account, { action: 'second-factor-refused' });
      return refused({ code: 'rules-broken', faults: [WRONG_CODE] });
    }
    await giveBack(trx, taken);
    await storeSecondFactorStep(trx, account.id, step);
    await passSession(trx, session.id);
    await recordEventOf(context, trx, account, { action: 'second-factor-passed' });
    return done(null);
  });
}

/** What is said of a code that is not taken. */
export const WRONG_CODE = {
  pointer: '/code',
  code: 'wrong-code',
  message: 'This code is not right, or it has been used. Wait for the next one.',
} as const;
