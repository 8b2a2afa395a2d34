import { sql } from 'kysely';
import type { Executor } from '../connection.js';

/** The ids of everything of one kind that belongs to a team, in their order. */
export async function idsOfTeam(
  db: Executor,
  teamId: string,
  table: 'patient' | 'referral' | 'session' | 'assessment',
): Promise<readonly string[]> {
  const { rows } = await sql<{ id: string }>`
    select distinct id from ${sql.table(table)} where team_id = ${teamId} order by id
  `.execute(db);
  return rows.map(({ id }) => id);
}
