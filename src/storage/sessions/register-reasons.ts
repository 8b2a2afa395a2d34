import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Executor } from '../connection.js';

/**
 * Why classes of a team held since a day were changed, each reason once, the latest first.
 *
 * @param asked what stands where nobody had to give a reason is left out
 */
export async function reasonsOfRegisters(
  db: Executor,
  teamId: string,
  asked: { readonly since: PlainDate; readonly without: string; readonly limit: number },
): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('session')
    .innerJoin('session_version', 'session_version.session_id', 'session.id')
    .select('session_version.reason')
    .where('session.team_id', '=', teamId)
    .where('session.held_on', '>=', asked.since)
    .where('session_version.reason', '<>', asked.without)
    .groupBy('session_version.reason')
    .orderBy((eb) => eb.fn.max('session_version.superseded_at'), 'desc')
    .orderBy('session_version.reason')
    .limit(asked.limit)
    .execute();
  return rows.map(({ reason }) => reason);
}
