import { hash } from 'node:crypto';
import { sql } from 'kysely';
import type { Executor } from '../connection.js';

/** What a request is known by when it is sent again. */
export interface RequestKey {
  /** Chosen by the client: 1 to 200 visible characters. */
  readonly key: string;
  /** Digest of what is asked for. */
  readonly hash: string;
  /** Of this sending of the request; a second sending has another. */
  readonly requestId: string;
}

/** An answer as it is given again. */
export interface KeptAnswer {
  readonly status: number;
  readonly contentType: string | null;
  readonly location: string | null;
  readonly etag: string | null;
  readonly body: string | null;
}

/** A use of a key; without an answer where the program ended before it was kept. */
export interface KeyUse {
  readonly hash: string;
  readonly subjectId: string | null;
  readonly answer: KeptAnswer | null;
}

/** SHA-256 in hexadecimal of the parts of a request, each kept apart from the next. */
export function digestOf(parts: readonly unknown[]): string {
  return hash('sha256', JSON.stringify(parts));
}

/** Old uses removed with each new one: more than are added, so that they cannot pile up. */
const REMOVED_AT_ONCE = 20;

/**
 * Takes a key for a request, in the transaction of what the request writes.
 *
 * @param claim the key, whose it is, and what the request made; `oldestKept` is the instant (or date) before which uses go
 * @returns false when another request holds the key
 */
export async function claimRequestKey(
  db: Executor,
  claim: RequestKey & {
    readonly accountId: string;
    readonly subjectId: string | null;
    readonly now: string;
    readonly oldestKept: string;
  },
): Promise<boolean> {
  await removeUsesBefore(db, claim.oldestKept);
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('request_key')
    .values({
      account_id: claim.accountId,
      key: claim.key,
      request_hash: claim.hash,
      request_id: claim.requestId,
      subject_id: claim.subjectId,
      status: null,
      content_type: null,
      location: null,
      etag: null,
      body: null,
      created_at: claim.now,
    })
    .onConflict((conflict) =>
      // A request that tells the trail of several things claims its key with the first.
      conflict
        .columns(['account_id', 'key'])
        .doUpdateSet({ subject_id: sql`coalesce(request_key.subject_id, excluded.subject_id)` })
        .where('request_key.request_id', '=', claim.requestId),
    )
    .executeTakeFirstOrThrow();
  return numInsertedOrUpdatedRows === 1n;
}

async function removeUsesBefore(db: Executor, instant: string): Promise<void> {
  const old = await db
    .selectFrom('request_key')
    .select(['account_id', 'key'])
    .where('created_at', '<', instant)
    .orderBy('created_at')
    .limit(REMOVED_AT_ONCE)
    .execute();
  for (const { account_id, key } of old) {
    await db.deleteFrom('request_key').where('account_id', '=', account_id).where('key', '=', key).execute();
  }
}

/** How a key was used; null when it was not. */
export async function findKeyUse(db: Executor, accountId: string, key: string): Promise<KeyUse | null> {
  const row = await db
    .selectFrom('request_key')
    .selectAll()
    .where('account_id', '=', accountId)
    .where('key', '=', key)
    .executeTakeFirst();
  if (row === undefined) return null;
  const { status, body, location, etag } = row;
  const answer = status === null ? null : { status, contentType: row.content_type, location, etag, body };
  return { hash: row.request_hash, subjectId: row.subject_id, answer };
}

/** Keeps the answer to a request that holds its key. */
export async function keepAnswer(
  db: Executor,
  accountId: string,
  { key, requestId }: RequestKey,
  answer: KeptAnswer,
): Promise<void> {
  await db
    .updateTable('request_key')
    .set({
      status: answer.status,
      content_type: answer.contentType,
      location: answer.location,
      etag: answer.etag,
      body: answer.body,
    })
    .where('account_id', '=', accountId)
    .where('key', '=', key)
    .where('request_id', '=', requestId)
    .execute();
}

/** Gives a key back that a refused request had taken. */
export async function withdrawClaim(
  db: Executor,
  accountId: string,
  { key, requestId }: RequestKey,
): Promise<void> {
  await db
    .deleteFrom('request_key')
    .where('account_id', '=', accountId)
    .where('key', '=', key)
    .where('request_id', '=', requestId)
    .where('status', 'is', null)
    .execute();
}
