import type { DelayKind } from '../../domain/account/sign-in-delay.js';
import type { Executor } from '../connection.js';

/** Wrong attempts in a row, and until when the next is refused. */
export interface StoredDelay {
  readonly failures: number;
  readonly lastFailedAt: string;
  readonly blockedUntil: string | null;
}

/** What is counted under a key; null where there is nothing. */
export async function findDelay(db: Executor, keyHash: string): Promise<StoredDelay | null> {
  const row = await db
    .selectFrom('sign_in_delay')
    .select(['failures', 'last_failed_at', 'blocked_until'])
    .where('key_hash', '=', keyHash)
    .executeTakeFirst();
  if (row === undefined) return null;
  return { failures: row.failures, lastFailedAt: row.last_failed_at, blockedUntil: row.blocked_until };
}

/** Stores what is counted under a key. */
export async function storeDelay(
  db: Executor,
  key: { readonly hash: string; readonly kind: DelayKind },
  delay: StoredDelay,
): Promise<void> {
  const values = {
    failures: delay.failures,
    last_failed_at: delay.lastFailedAt,
    blocked_until: delay.blockedUntil,
  };
  await db
    .insertInto('sign_in_delay')
    .values({ key_hash: key.hash, kind: key.kind, ...values })
    .onConflict((conflict) => conflict.column('key_hash').doUpdateSet(values))
    .execute();
}

/** Forgets a key. */
export async function forgetDelay(db: Executor, keyHash: string): Promise<void> {
  await db.deleteFrom('sign_in_delay').where('key_hash', '=', keyHash).execute();
}

/** Forgets every key under which nothing was counted since an instant. */
export async function forgetDelaysBefore(db: Executor, instant: string): Promise<void> {
  await db.deleteFrom('sign_in_delay').where('last_failed_at', '<', instant).execute();
}
