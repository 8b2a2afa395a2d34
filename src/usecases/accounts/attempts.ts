import { hashKey } from '../../auth/token.js';
import { laterBy, secondsBetween } from '../../domain/calendar/instant.js';
import { delayAfter, FAILURES_KEPT_S } from '../../domain/account/sign-in-delay.js';
import type { DelayKind } from '../../domain/account/sign-in-delay.js';
import {
  findDelay,
  forgetDelay,
  forgetDelaysBefore,
  storeDelay,
} from '../../storage/accounts/sign-in-delays.js';
import type { StoredDelay } from '../../storage/accounts/sign-in-delays.js';
import type { Executor } from '../../storage/connection.js';
import type { Context } from '../context.js';

/** What an attempt is counted by; of what was typed only a hash is kept. */
export interface AttemptKey {
  readonly kind: DelayKind;
  readonly hash: string;
}

/** The keys of an attempt to sign in. @param address of the network, null where it is not known */
export function signInKeys(signInName: string, address: string | null): readonly AttemptKey[] {
  const byName: AttemptKey = { kind: 'account', hash: hashKey('sign-in-name', signInName) };
  return address === null ? [byName] : [byName, { kind: 'address', hash: hashKey('address', address) }];
}

/** The key of somebody who is signed in and shows a secret once more: a code, or the passphrase. */
export function confirmationKeys(accountId: string): readonly AttemptKey[] {
  return [{ kind: 'account', hash: hashKey('confirmation', accountId) }];
}

/** An attempt that counts as wrong until it has proved right. */
export type Attempt =
  | { readonly kind: 'taken'; readonly counted: readonly (AttemptKey & { readonly delay: StoredDelay })[] }
  | { readonly kind: 'delayed'; readonly retryAfterSeconds: number };

/**
 * Takes an attempt before anything is compared, in a transaction of its own: many attempts at the same time are
 * counted before the first of them is answered.
 */
export async function takeAttempt(
  context: Context,
  trx: Executor,
  keys: readonly AttemptKey[],
): Promise<Attempt> {
  const now = context.clock.now();
  await forgetDelaysBefore(trx, laterBy(now, -FAILURES_KEPT_S));
  const known = new Map<string, StoredDelay | null>();
  let blockedUntil = now;
  for (const { hash } of keys) {
    const delay = await findDelay(trx, hash);
    known.set(hash, delay);
    if (delay !== null && delay.blockedUntil !== null && delay.blockedUntil > blockedUntil)
      blockedUntil = delay.blockedUntil;
  }
  if (blockedUntil > now) {
    return { kind: 'delayed', retryAfterSeconds: Math.ceil(secondsBetween(now, blockedUntil)) };
  }
  const counted = keys.map((key) => {
    const failures = (known.get(key.hash)?.failures ?? 0) + 1;
    const delayS = delayAfter(key.kind, failures);
    const until = delayS === 0 ? null : laterBy(now, delayS);
    return { ...key, delay: { failures, lastFailedAt: now, blockedUntil: until } };
  });
  for (const key of counted) await storeDelay(trx, key, key.delay);
  return { kind: 'taken', counted };
}

/**
 * Takes back that an attempt counted as wrong. Its account starts anew; its address only gets back the one, so that
 * nobody clears an address by signing in to an account of their own.
 */
export async function giveBack(
  trx: Executor,
  { counted }: Extract<Attempt, { kind: 'taken' }>,
): Promise<void> {
  for (const key of counted) {
    if (key.kind === 'account') {
      await forgetDelay(trx, key.hash);
      continue;
    }
    const present = await findDelay(trx, key.hash);
    if (present === null) continue;
    const isLast = present.failures === key.delay.failures;
    const failures = Math.max(0, present.failures - 1);
    await storeDelay(trx, key, { ...present, failures, blockedUntil: isLast ? null : present.blockedUntil });
  }
}
