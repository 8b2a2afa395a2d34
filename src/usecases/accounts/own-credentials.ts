import { isCommonPassword } from '../../auth/common-passwords.js';
import { hashPassphrase, isPassphraseOf } from '../../auth/passphrase-hash.js';
import { makeSecondFactorSecret, secondFactorUri, stepOfCode } from '../../auth/second-factor.js';
import { checkPassphrase, normalisePassphrase } from '../../domain/account/passphrase.js';
import { epochMs } from '../../domain/calendar/instant.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { findAccount } from '../../storage/accounts/accounts.js';
import type { FullAccount } from '../../storage/accounts/accounts.js';
import {
  clearSecondFactor,
  confirmStoredSecondFactor,
  storePassphrase,
  storeSecondFactor,
} from '../../storage/accounts/credentials.js';
import { endSessions, passSession } from '../../storage/accounts/login-sessions.js';
import type { Executor } from '../../storage/connection.js';
import { recordEvent } from '../audit/record-event.js';
import type { Actor, Context } from '../context.js';
import { confirmationKeys, giveBack, takeAttempt } from './attempts.js';
import { WRONG_CODE } from './sign-in.js';

/** Somebody in a session of their own, as whoseSession gives it. */
export interface OwnSession {
  readonly actor: Actor;
  readonly sessionId: string;
}

/**
 * Changes the passphrase of whoever is signed in; every other session of theirs ends.
 *
 * @returns refused with the pointer `/currentPassphrase` where that is wrong, `/passphrase` where the new one may not be
 *   used, and `sign-in-delayed` after several wrong attempts
 */
export async function changePassphrase(
  context: Context,
  own: OwnSession,
  change: { readonly currentPassphrase: string; readonly passphrase: string },
): Promise<Outcome<null>> {
  const proved = await provePassphrase(context, own.actor, change.currentPassphrase);
  if (proved.kind === 'refused') return proved;
  const passphrase = normalisePassphrase(change.passphrase);
  const rules = { signInName: proved.value.signInName ?? proved.value.id, isCommon: isCommonPassword };
  const faults = checkPassphrase('/passphrase', passphrase, rules);
  if (faults.length > 0) return refused({ code: 'rules-broken', faults });
  const hash = await hashPassphrase(passphrase);
  return context.db.transaction().execute(async (trx) => {
    const now = context.clock.now();
    const { accountId } = own.actor;
    await storePassphrase(trx, accountId, { hash, now });
    const ended = await endSessions(trx, accountId, {
      reason: 'passphrase-changed',
      now,
      without: own.sessionId,
    });
    await recordEvent(context, trx, own.actor, { action: 'passphrase-changed', details: { ended } });
    return done(null);
  });
}

/**
 * Begins to set up a second factor: it is asked for only after confirmSecondFactor.
 *
 * @returns the secret (Base32) and the address for an authenticator program; shown to nobody but its owner
 */
export async function beginSecondFactor(
  context: Context,
  { actor }: OwnSession,
): Promise<Outcome<{ readonly secret: string; readonly uri: string }>> {
  return context.db.transaction().execute(async (trx) => {
    const account = await ownAccount(trx, actor);
    if (account.hasSecondFactor) return refused({ code: 'second-factor-present' });
    const secret = makeSecondFactorSecret();
    await storeSecondFactor(trx, account.id, secret);
    await recordEvent(context, trx, actor, { action: 'second-factor-begun' });
    return done({ secret, uri: secondFactorUri(secret, account.signInName ?? account.displayName) });
  });
}

/** The second factor that was begun and of which no code has been shown yet, for its owner; null where there is none. */
export async function pendingSecondFactor(
  context: Context,
  { actor }: OwnSession,
): Promise<{ readonly secret: string; readonly uri: string } | null> {
  const account = await ownAccount(context.reader, actor);
  if (account.hasSecondFactor || account.secondFactor === null) return null;
  const { secret } = account.secondFactor;
  return { secret, uri: secondFactorUri(secret, account.signInName ?? account.displayName) };
}

/**
 * Takes the first code of a second factor; from now on it is asked for at every sign-in. Other sessions are asked for
 * it at once.
 */
export async function confirmSecondFactor(
  context: Context,
  { actor, sessionId }: OwnSession,
  code: string,
): Promise<Outcome<null>> {
  return context.db.transaction().execute(async (trx) => {
    const account = await ownAccount(trx, actor);
    if (account.hasSecondFactor) return refused({ code: 'second-factor-present' });
    const now = context.clock.now();
    const step =
      account.secondFactor === null ? null : stepOfCode(account.secondFactor.secret, code, epochMs(now));
    if (step === null) return refused({ code: 'rules-broken', faults: [WRONG_CODE] });
    await confirmStoredSecondFactor(trx, account.id, { step, now });
    await passSession(trx, sessionId);
    await recordEvent(context, trx, actor, { action: 'second-factor-set-up' });
    return done(null);
  });
}

/** Takes the own second factor away, with the passphrase; every other session ends. */
export async function removeSecondFactor(
  context: Context,
  { actor, sessionId }: OwnSession,
  currentPassphrase: string,
): Promise<Outcome<null>> {
  const proved = await provePassphrase(context, actor, currentPassphrase);
  if (proved.kind === 'refused') return proved;
  return context.db.transaction().execute(async (trx) => {
    const now = context.clock.now();
    await clearSecondFactor(trx, actor.accountId);
    const end = { reason: 'second-factor-changed', now, without: sessionId } as const;
    await endSessions(trx, actor.accountId, end);
    await recordEvent(context, trx, actor, { action: 'second-factor-removed' });
    return done(null);
  });
}

/** The account of whoever shows its passphrase once more; wrong ones are counted and told. */
async function provePassphrase(
  context: Context,
  actor: Actor,
  passphrase: string,
): Promise<Outcome<FullAccount>> {
  const begun = await context.db.transaction().execute(async (trx) => {
    const taken = await takeAttempt(context, trx, confirmationKeys(actor.accountId));
    if (taken.kind === 'delayed') await recordEvent(context, trx, actor, { action: 'sign-in-delayed' });
    return { taken, account: await ownAccount(trx, actor) };
  });
  const { taken, account } = begun;
  if (taken.kind === 'delayed') {
    return refused({ code: 'sign-in-delayed', retryAfterSeconds: taken.retryAfterSeconds });
  }
  const matches = await isPassphraseOf(account.passphraseHash, normalisePassphrase(passphrase));
  return context.db.transaction().execute(async (trx) => {
    if (!matches) {
      await recordEvent(context, trx, actor, { action: 'passphrase-refused' });
      return refused({ code: 'rules-broken', faults: [WRONG_PASSPHRASE] });
    }
    await giveBack(trx, taken);
    return done(account);
  });
}

async function ownAccount(db: Executor, actor: Actor): Promise<FullAccount> {
  const account = await findAccount(db, { id: actor.accountId });
  if (account === null) throw new Error('Somebody is signed in whose account is not there.');
  return account;
}

const WRONG_PASSPHRASE = {
  pointer: '/currentPassphrase',
  code: 'wrong-passphrase',
  message: 'This is not the present passphrase.',
} as const;
