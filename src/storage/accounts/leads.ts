import type { Executor } from '../connection.js';

/** Id of the longest standing active lead of a team; null where there is none. */
export async function firstActiveLead(db: Executor, teamId: string): Promise<string | null> {
  const row = await db
    .selectFrom('account')
    .select('id')
    .where('team_id', '=', teamId)
    .where('role', '=', 'lead')
    .where('status', '=', 'active')
    .orderBy('id')
    .executeTakeFirst();
  return row?.id ?? null;
}
