import type { Insertable, Selectable } from 'kysely';
import { plainDate } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { SESSION_MODES } from '../../domain/referral/closed-sets.js';
import type { Session, SessionDetails } from '../../domain/session/session.js';
import type { EntryFilter } from '../../domain/history/entered-in-error.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { inErrorFromRow } from '../in-error.js';
import { pageOf } from '../page.js';
import type { Page, PageRequest } from '../page.js';
import { memberOf } from '../row-mapping.js';
import type { SessionTable } from '../record-tables.js';

/** The team's session by id; null when absent or of another team. */
export async function findSession(db: Executor, teamId: string, id: string): Promise<Session | null> {
  const row = await db
    .selectFrom('session')
    .selectAll()
    .where('team_id', '=', teamId)
    .where('id', '=', id)
    .executeTakeFirst();
  return row === undefined ? null : sessionFromRow(row);
}

/** Stores a new session. */
export async function insertSession(
  db: Executor,
  session: SessionDetails & {
    readonly id: string;
    readonly teamId: string;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  await db
    .insertInto('session')
    .values({
      id: session.id,
      team_id: session.teamId,
      version: 1,
      ...sessionColumns(session),
      created_at: session.now,
      created_by: session.accountId,
    })
    .execute();
}

/** Which sessions a list is to show. */
export interface SessionFilter {
  readonly siteId: string | null;
  readonly from: PlainDate | null;
  readonly to: PlainDate | null;
  /** Those that stand where it is left out. */
  readonly entries?: EntryFilter;
}

/** The team's sessions, latest first. */
export async function listSessionRows(
  db: Executor,
  teamId: string,
  filter: SessionFilter,
  request: PageRequest,
): Promise<Page<Session>> {
  let query = db.selectFrom('session').selectAll().where('team_id', '=', teamId);
  if (filter.siteId !== null) query = query.where('site_id', '=', filter.siteId);
  if (filter.from !== null) query = query.where('held_on', '>=', filter.from);
  if (filter.to !== null) query = query.where('held_on', '<=', filter.to);
  const { entries = 'standing' } = filter;
  if (entries !== 'all') {
    query = query.where('entered_in_error_at', entries === 'standing' ? 'is' : 'is not', null);
  }
  const { after } = request;
  if (after !== null) {
    query = query.where((eb) =>
      eb.or([
        eb('held_on', '<', after.key),
        eb.and([eb('held_on', '=', after.key), eb('id', '<', after.id)]),
      ]),
    );
  }
  const rows = await query
    .orderBy('held_on', 'desc')
    .orderBy('id', 'desc')
    .limit(request.limit + 1)
    .execute();
  return pageOf(rows.map(sessionFromRow), request, (session) => ({ key: session.heldOn, id: session.id }));
}

/** The sessions that a person attended and that stand, earliest first. */
export async function attendedSessions(db: Executor, referralId: string): Promise<readonly Session[]> {
  const rows = await sessionsAttended(db, referralId)
    .selectAll('session')
    .orderBy('session.held_on')
    .orderBy('session.id')
    .execute();
  return rows.map(sessionFromRow);
}

/** The last day on which a person attended a session; null when they attended none. */
export async function lastContactOn(db: Executor, referralId: string): Promise<PlainDate | null> {
  const [row] = await lastContact(db, { referralId });
  const heldOn = row?.held_on ?? null;
  return heldOn === null ? null : plainDate(heldOn);
}

// The greatest, not the first in order: to order costs the database a table of its own at every call.
const lastContact = composedOnce((db, value: ValueOf<{ referralId: string }>) =>
  sessionsAttended(db, value('referralId')).select(({ fn }) =>
    fn.max<string | null>('session.held_on').as('held_on'),
  ),
);

/** Sessions that a person attended, where neither the session nor the entry is in error or superseded. */
function sessionsAttended(db: Executor, referralId: string) {
  return db
    .selectFrom('attendance')
    .innerJoin('session', 'session.id', 'attendance.session_id')
    .where('attendance.referral_id', '=', referralId)
    .where('attendance.outcome', '=', 'attended')
    .where('attendance.superseded_at', 'is', null)
    .where('session.entered_in_error_at', 'is', null);
}

/** The day of the first session whose register names a referral, whatever became of it; null when none does. */
export async function firstSessionOn(db: Executor, referralId: string): Promise<PlainDate | null> {
  const row = await db
    .selectFrom('attendance')
    .innerJoin('session', 'session.id', 'attendance.session_id')
    .select('session.held_on')
    .where('attendance.referral_id', '=', referralId)
    .where('attendance.superseded_at', 'is', null)
    .where('session.entered_in_error_at', 'is', null)
    .orderBy('session.held_on')
    .limit(1)
    .executeTakeFirst();
  return row === undefined ? null : plainDate(row.held_on);
}

/** The columns of a session that can be corrected. */
export function sessionColumns(
  session: SessionDetails,
): Pick<Insertable<SessionTable>, 'site_id' | 'held_on' | 'mode' | 'is_supervised'> {
  return {
    site_id: session.siteId,
    held_on: session.heldOn,
    mode: session.mode,
    is_supervised: Number(session.isSupervised),
  };
}

/** The session of a stored row. */
export function sessionFromRow(row: Selectable<SessionTable>): Session {
  return {
    id: row.id,
    version: row.version,
    siteId: row.site_id,
    heldOn: plainDate(row.held_on),
    mode: memberOf(SESSION_MODES, row.mode),
    isSupervised: row.is_supervised === 1,
    enteredInError: inErrorFromRow(row),
  };
}
