import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { digestOf, findKeyUse, keepAnswer, withdrawClaim } from '../../storage/request-keys/request-keys.js';
import type { KeptAnswer, RequestKey } from '../../storage/request-keys/request-keys.js';
import { recordRead } from '../audit/record-event.js';
import type { Actor, Context } from '../context.js';
import { claimKey } from './claim-key.js';

/** What a client asks for under a key. */
export interface KeyedRequest {
  readonly key: string;
  readonly requestId: string;
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
}

/** The key of a request, with a digest of what is asked for and in which role: another role might be shown other things. */
export function requestKeyOf(actor: Actor, request: KeyedRequest): RequestKey {
  const { key, requestId, method, path, body } = request;
  return { key, requestId, hash: digestOf([actor.role, method, path, body ?? null]) };
}

/**
 * The answer that was given to the same request before.
 *
 * @returns null where the key is new; refused where it was used for another request, or where the request was carried
 *   out and its answer is not there, since the program ended in between
 */
export async function formerAnswer(
  context: Context,
  actor: Actor,
  requestKey: RequestKey,
): Promise<Outcome<KeptAnswer | null>> {
  const use = await findKeyUse(context.db, actor.accountId, requestKey.key);
  if (use === null) return done(null);
  if (use.hash !== requestKey.hash) return refused({ code: 'key-used-otherwise' });
  if (use.answer === null) return refused({ code: 'answer-not-kept', existingId: use.subjectId });
  await recordRead(context, actor, {
    action: 'answer-repeated',
    ...(use.subjectId === null ? {} : { subjectId: use.subjectId }),
  });
  return done(use.answer);
}

/** Keeps the answer to a request that was carried out, so that the same request is answered by it again. */
export async function keepAnswerOf(
  context: Context,
  actor: Actor,
  requestKey: RequestKey,
  answer: KeptAnswer,
): Promise<void> {
  const { accountId } = actor;
  await context.db.transaction().execute(async (trx) => {
    // A request that told the trail of nothing, such as a sum, takes its key only now.
    await claimKey(context, trx, { accountId, requestKey, subjectId: null });
    await keepAnswer(trx, accountId, requestKey, answer);
  });
}

/** Gives the key of a refused request back: it made nothing, and may be sent again when it has been put right. */
export async function giveKeyBack(context: Context, actor: Actor, requestKey: RequestKey): Promise<void> {
  await context.db.transaction().execute((trx) => withdrawClaim(trx, actor.accountId, requestKey));
}
