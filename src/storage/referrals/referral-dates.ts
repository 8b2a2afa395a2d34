import { plainDate } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { optionalDate } from '../row-mapping.js';

/** Receipt and closure of those of some referrals that the team has, by id. */
export async function referralDates(
  db: Executor,
  teamId: string,
  ids: readonly string[],
): Promise<
  ReadonlyMap<
    string,
    { readonly receivedOn: PlainDate; readonly closedOn: PlainDate | null; readonly isInError: boolean }
  >
> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('referral')
    .select(['id', 'received_on', 'closed_on', 'entered_in_error_at'])
    .where('team_id', '=', teamId)
    .where('id', 'in', ids)
    .execute();
  return new Map(
    rows.map((row) => [
      row.id,
      {
        receivedOn: plainDate(row.received_on),
        closedOn: optionalDate(row.closed_on),
        isInError: row.entered_in_error_at !== null,
      },
    ]),
  );
}

/** The day on which a patient's first referral was received; null when there is none. */
export async function firstReceiptOn(db: Executor, patientId: string): Promise<PlainDate | null> {
  const row = await db
    .selectFrom('referral')
    .select('received_on')
    .where('patient_id', '=', patientId)
    .where('entered_in_error_at', 'is', null)
    .orderBy('received_on')
    .limit(1)
    .executeTakeFirst();
  return row === undefined ? null : plainDate(row.received_on);
}

/** Whose referral it is, and the dates that an assessment of it is checked against; null when absent or of another team. */
export async function courseOfReferral(
  db: Executor,
  teamId: string,
  id: string,
): Promise<{
  readonly patientId: string;
  readonly bornOn: PlainDate;
  readonly receivedOn: PlainDate;
  readonly closedOn: PlainDate | null;
  /** The referral was entered in error: nothing is recorded for it. */
  readonly isInError: boolean;
} | null> {
  const [row] = await datesOfReferral(db, { teamId, id });
  if (row === undefined) return null;
  return {
    patientId: row.patient_id,
    bornOn: plainDate(row.born_on),
    receivedOn: plainDate(row.received_on),
    closedOn: optionalDate(row.closed_on),
    isInError: row.entered_in_error_at !== null,
  };
}

const datesOfReferral = composedOnce((db, value: ValueOf<{ teamId: string; id: string }>) =>
  db
    .selectFrom('referral')
    .innerJoin('patient', 'patient.id', 'referral.patient_id')
    .select([
      'referral.patient_id',
      'patient.born_on',
      'referral.received_on',
      'referral.closed_on',
      'referral.entered_in_error_at',
    ])
    .where('referral.team_id', '=', value('teamId'))
    .where('referral.id', '=', value('id')),
);
