import { plainDate } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Executor } from '../connection.js';
import { optionalDate } from '../row-mapping.js';

/** Receipt and closure of those of some referrals that the team has, by id. */
export async function referralDates(
  db: Executor,
  teamId: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, { readonly receivedOn: PlainDate; readonly closedOn: PlainDate | null }>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('referral')
    .select(['id', 'received_on', 'closed_on'])
    .where('team_id', '=', teamId)
    .where('id', 'in', ids)
    .execute();
  return new Map(
    rows.map((row) => [
      row.id,
      { receivedOn: plainDate(row.received_on), closedOn: optionalDate(row.closed_on) },
    ]),
  );
}

/** The day on which a patient's first referral was received; null when there is none. */
export async function firstReceiptOn(db: Executor, patientId: string): Promise<PlainDate | null> {
  const row = await db
    .selectFrom('referral')
    .select('received_on')
    .where('patient_id', '=', patientId)
    .orderBy('received_on')
    .limit(1)
    .executeTakeFirst();
  return row === undefined ? null : plainDate(row.received_on);
}
