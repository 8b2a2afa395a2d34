import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { nameKey } from '../../domain/patient/name-key.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';

/** Ids of the team's people with a name and a date of birth. */
export async function patientIdsByNameAndBirth(
  db: Executor,
  teamId: string,
  person: { readonly familyName: string; readonly givenName: string; readonly bornOn: PlainDate },
): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('patient')
    .select(['id', 'given_name'])
    .where('team_id', '=', teamId)
    .where('family_name_key', '=', nameKey(person.familyName))
    .where('born_on', '=', person.bornOn)
    .where('merged_into', 'is', null)
    .execute();
  return rows.filter((row) => nameKey(row.given_name) === nameKey(person.givenName)).map((row) => row.id);
}

/** Id of a person's referral that was received on a day, entries in error left aside; null where there is none. */
export async function referralIdReceivedOn(
  db: Executor,
  patientId: string,
  receivedOn: PlainDate,
): Promise<string | null> {
  const [row] = await referralIdsReceivedOn(db, { patientId, receivedOn });
  return row?.id ?? null;
}

const referralIdsReceivedOn = composedOnce(
  (db, value: ValueOf<{ patientId: string; receivedOn: PlainDate }>) =>
    db
      .selectFrom('referral')
      .select('id')
      .where('patient_id', '=', value('patientId'))
      .where('received_on', '=', value('receivedOn'))
      .where('entered_in_error_at', 'is', null)
      .orderBy('id'),
);

/** What people with these ids are found by. */
export async function peopleKnownBy(
  db: Executor,
  ids: readonly string[],
): Promise<
  readonly {
    readonly nhsNumber: string | null;
    readonly familyName: string;
    readonly givenName: string;
    readonly bornOn: string;
  }[]
> {
  if (ids.length === 0) return [];
  const rows = await db
    .selectFrom('patient')
    .select(['nhs_number', 'family_name', 'given_name', 'born_on'])
    .where('id', 'in', ids)
    .execute();
  return rows.map((row) => ({
    nhsNumber: row.nhs_number,
    familyName: row.family_name,
    givenName: row.given_name,
    bornOn: row.born_on,
  }));
}
