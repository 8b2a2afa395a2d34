import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Session } from '../../domain/session/session.js';
import type { Executor } from '../connection.js';
import { sessionFromRow } from '../sessions/sessions.js';

/** The team's sessions of some days, both included, on whose register nobody stands; earliest first. */
export async function unregisteredSessions(
  db: Executor,
  teamId: string,
  span: { readonly from: PlainDate; readonly to: PlainDate; readonly siteId: string | null },
): Promise<readonly Session[]> {
  let query = db
    .selectFrom('session')
    .selectAll('session')
    .where('session.team_id', '=', teamId)
    .where('session.entered_in_error_at', 'is', null)
    .where('session.held_on', '>=', span.from)
    .where('session.held_on', '<=', span.to)
    .where((eb) =>
      eb.not(
        eb.exists(
          eb
            .selectFrom('attendance')
            .select('attendance.id')
            .whereRef('attendance.session_id', '=', 'session.id')
            .where('attendance.superseded_at', 'is', null),
        ),
      ),
    );
  if (span.siteId !== null) query = query.where('session.site_id', '=', span.siteId);
  const rows = await query.orderBy('session.held_on').orderBy('session.id').execute();
  return rows.map(sessionFromRow);
}
