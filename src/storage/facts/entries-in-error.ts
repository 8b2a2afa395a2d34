import type { Period } from '../../domain/calendar/period.js';
import type { EntriesInError } from '../../domain/history/entered-in-error.js';
import type { Executor } from '../connection.js';

/**
 * How many entries of a team, dated in a period, are marked as entered in error. Each part is a range of an index that
 * holds only such entries, so that the work grows with them and not with the store.
 */
export async function entriesInErrorOf(
  db: Executor,
  teamId: string,
  { firstDay, lastDay }: Period,
): Promise<EntriesInError> {
  const referrals = await db
    .selectFrom('referral')
    .select('id')
    .where('team_id', '=', teamId)
    .where('received_on', '>=', firstDay)
    .where('received_on', '<=', lastDay)
    .where('entered_in_error_at', 'is not', null)
    .execute();
  const offers = await db
    .selectFrom('offer')
    .select('offer.id')
    // Not a join: the few offers in error are gone through, and not every referral of the team.
    .where((eb) =>
      eb.exists(
        eb
          .selectFrom('referral')
          .select('referral.id')
          .whereRef('referral.id', '=', 'offer.referral_id')
          .where('referral.team_id', '=', teamId),
      ),
    )
    .where('offer.offered_on', '>=', firstDay)
    .where('offer.offered_on', '<=', lastDay)
    .where('offer.entered_in_error_at', 'is not', null)
    .execute();
  const sessions = await db
    .selectFrom('session')
    .select('id')
    .where('team_id', '=', teamId)
    .where('held_on', '>=', firstDay)
    .where('held_on', '<=', lastDay)
    .where('entered_in_error_at', 'is not', null)
    .execute();
  const assessments = await db
    .selectFrom('assessment')
    .select('id')
    .where('team_id', '=', teamId)
    .where('assessed_on', '>=', firstDay)
    .where('assessed_on', '<=', lastDay)
    .where('entered_in_error_at', 'is not', null)
    .where('superseded_at', 'is', null)
    .execute();
  return {
    referrals: referrals.length,
    offers: offers.length,
    sessions: sessions.length,
    assessments: assessments.length,
  };
}
