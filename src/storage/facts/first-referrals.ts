import type { Executor } from '../connection.js';
import { idsInStatement } from '../ids-in-statement.js';

/**
 * Ids of the first referral of each of some people: the earliest received that was not registered in error.
 *
 * @param patientIds of one team, in any number that one statement takes
 */
export async function firstReferralIds(
  db: Executor,
  patientIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await db
    .selectFrom('referral')
    .select(['id', 'patient_id', 'closure_reason'])
    .where('patient_id', 'in', idsInStatement([...new Set(patientIds)]))
    .where('entered_in_error_at', 'is', null)
    .orderBy('received_on')
    .orderBy('id')
    .execute();
  const first = new Map<string, string>();
  for (const { id, patient_id: patientId, closure_reason: reason } of rows) {
    if (reason !== 'registered-in-error' && !first.has(patientId)) first.set(patientId, id);
  }
  return new Set(first.values());
}
