import type { Period } from '../../domain/calendar/period.js';
import type { Executor } from '../connection.js';

/**
 * Ids of the team's referrals that may belong to any cohort of a period: received in it, at a supervised session in it,
 * with a discharge assessment in it, or closed in it. Which of them do is for the rules of counting to say.
 *
 * The work grows with the rows of the period, not with the store: each part is a range of an index.
 */
export async function idsTouchedInPeriod(
  db: Executor,
  teamId: string,
  period: Period,
): Promise<readonly string[]> {
  const { firstDay, lastDay } = period;
  const rows = await db
    .selectFrom('referral')
    .select('id')
    .where('team_id', '=', teamId)
    .where('received_on', '>=', firstDay)
    .where('received_on', '<=', lastDay)
    .union((eb) =>
      eb
        .selectFrom('session')
        .innerJoin('attendance', 'attendance.session_id', 'session.id')
        .select('attendance.referral_id as id')
        .where('session.team_id', '=', teamId)
        .where('session.held_on', '>=', firstDay)
        .where('session.held_on', '<=', lastDay)
        .where('session.is_supervised', '=', 1)
        .where('attendance.outcome', '=', 'attended')
        .where('attendance.superseded_at', 'is', null),
    )
    .union((eb) =>
      eb
        .selectFrom('counted_sessions')
        .select('referral_id as id')
        .where('team_id', '=', teamId)
        .where('started_on', '>=', firstDay)
        .where('started_on', '<=', lastDay),
    )
    .union((eb) =>
      eb
        .selectFrom('assessment')
        .select('referral_id as id')
        .where('team_id', '=', teamId)
        .where('timepoint', '=', 'discharge')
        .where('assessed_on', '>=', firstDay)
        .where('assessed_on', '<=', lastDay)
        .where('superseded_at', 'is', null),
    )
    .union((eb) =>
      eb
        .selectFrom('referral')
        .select('id')
        .where('team_id', '=', teamId)
        .where('closed_on', '>=', firstDay)
        .where('closed_on', '<=', lastDay),
    )
    .orderBy('id')
    .execute();
  return rows.map((row) => row.id);
}
