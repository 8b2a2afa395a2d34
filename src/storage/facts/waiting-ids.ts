import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Executor } from '../connection.js';

/**
 * Ids of the team's referrals that may wait for a start on a day: received by then, not closed by then, and without a
 * supervised session attended by then. Whether they do wait is for the rules of the pathway to say.
 *
 * The work grows with those who are open on the day or were closed after it, not with the store.
 */
export async function idsWaitingOn(db: Executor, teamId: string, day: PlainDate): Promise<readonly string[]> {
  const receivedBy = db
    .selectFrom('referral')
    .select('referral.id')
    .where('referral.team_id', '=', teamId)
    // Not a bare column: nearly everybody was received by then, so the index to go by is that of closures.
    .where((eb) => eb.fn.coalesce('referral.received_on', eb.val('')), '<=', day)
    .where((eb) =>
      eb.not(
        eb.exists(
          eb
            .selectFrom('attendance')
            .innerJoin('session', 'session.id', 'attendance.session_id')
            .select('attendance.id')
            .whereRef('attendance.referral_id', '=', 'referral.id')
            .where('attendance.outcome', '=', 'attended')
            .where('attendance.superseded_at', 'is', null)
            .where('session.entered_in_error_at', 'is', null)
            .where('session.is_supervised', '=', 1)
            .where('session.held_on', '<=', day),
        ),
      ),
    );
  // Two ranges of an index; a condition joined by "or" would walk through every referral of the team.
  const rows = await receivedBy
    .where('referral.closed_on', 'is', null)
    .unionAll(receivedBy.where('referral.closed_on', '>', day))
    .execute();
  return rows.map((row) => row.id);
}
