import { addDays } from '../../domain/calendar/plain-date.js';
import type { Executor } from '../../storage/connection.js';
import { claimRequestKey } from '../../storage/request-keys/request-keys.js';
import type { RequestKey } from '../../storage/request-keys/request-keys.js';
import type { Context } from '../context.js';

/** Whole days for which an answer is kept at least. */
const KEPT_DAYS = 1;

/**
 * Takes the key of a request, in the transaction in which the request writes, so that it can never be carried out twice.
 *
 * @throws Error with the code `REQUEST_KEY_TAKEN` when another process has carried it out meanwhile
 */
export async function claimKey(
  context: Context,
  trx: Executor,
  claim: { readonly accountId: string; readonly requestKey: RequestKey; readonly subjectId: string | null },
): Promise<void> {
  const { accountId, requestKey, subjectId } = claim;
  const isMine = await claimRequestKey(trx, {
    ...requestKey,
    accountId,
    subjectId,
    now: context.clock.now(),
    // A date is compared with instants as text: a use is kept a whole day, whatever its hour.
    oldestKept: addDays(context.clock.today(), -KEPT_DAYS - 1),
  });
  if (!isMine) throw Object.assign(new Error('The key is taken.'), { code: 'REQUEST_KEY_TAKEN' });
}
