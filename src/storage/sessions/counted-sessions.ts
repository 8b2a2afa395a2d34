import type { Selectable } from 'kysely';
import { plainDate } from '../../domain/calendar/plain-date.js';
import type { SessionCounts } from '../../domain/session/session-counts.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { idsInStatement } from '../ids-in-statement.js';
import type { CountedSessionsTable } from '../import-tables.js';
import { optionalDate } from '../row-mapping.js';
import { rowsInto } from '../rows-into.js';

/** Counts of sessions by referral, for the referrals that have any. */
export async function countedSessionsOf(
  db: Executor,
  referralIds: readonly string[],
): Promise<ReadonlyMap<string, SessionCounts>> {
  const rows = await db
    .selectFrom('counted_sessions')
    .selectAll()
    .where('referral_id', 'in', idsInStatement(referralIds))
    .execute();
  return new Map(rows.map((row) => [row.referral_id, fromRow(row)]));
}

/** Counts of sessions of a referral; null where it has none. */
export async function countedSessionsOfReferral(
  db: Executor,
  referralId: string,
): Promise<SessionCounts | null> {
  const [row] = await countedOfReferral(db, { referralId });
  return row === undefined ? null : fromRow(row);
}

const countedOfReferral = composedOnce((db, value: ValueOf<{ referralId: string }>) =>
  db.selectFrom('counted_sessions').selectAll().where('referral_id', '=', value('referralId')),
);

/** Stores the counts of a referral that has none yet. */
export async function insertCountedSessions(
  db: Executor,
  counted: {
    readonly referralId: string;
    readonly teamId: string;
    readonly counts: SessionCounts;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<void> {
  const { counts } = counted;
  await intoCountedSessions(db, [
    {
      referral_id: counted.referralId,
      team_id: counted.teamId,
      started_on: counts.startedOn,
      counted_on: counts.countedOn,
      attended: counts.attended,
      did_not_attend: counts.didNotAttend,
      cancelled_by_patient: counts.cancelledByPatient,
      cancelled_by_service: counts.cancelledByService,
      created_at: counted.now,
      created_by: counted.accountId,
    },
  ]);
}

const intoCountedSessions = rowsInto('counted_sessions');

function fromRow(row: Selectable<CountedSessionsTable>): SessionCounts {
  return {
    startedOn: optionalDate(row.started_on),
    countedOn: plainDate(row.counted_on),
    attended: row.attended,
    didNotAttend: row.did_not_attend,
    cancelledByPatient: row.cancelled_by_patient,
    cancelledByService: row.cancelled_by_service,
  };
}
