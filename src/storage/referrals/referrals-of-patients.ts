import type { Executor } from '../connection.js';

/** Ids of the referrals of some patients of a team, latest receipt first. */
export async function referralIdsOfPatients(
  db: Executor,
  teamId: string,
  patientIds: readonly string[],
): Promise<readonly string[]> {
  if (patientIds.length === 0) return [];
  const rows = await db
    .selectFrom('referral')
    .select('id')
    .where('team_id', '=', teamId)
    .where('patient_id', 'in', patientIds)
    .orderBy('received_on', 'desc')
    .orderBy('id', 'desc')
    .execute();
  return rows.map(({ id }) => id);
}
