import { sql } from 'kysely';
import { plainDate } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { RecordDue } from '../../domain/retention/retention.js';
import type { Executor } from '../connection.js';
import { pageOf } from '../page.js';
import type { Page, PageRequest } from '../page.js';

interface Row {
  readonly id: string;
  readonly version: number;
  readonly family_name: string;
  readonly given_name: string;
  readonly born_on: string;
  readonly referrals: number;
  readonly open_referrals: number;
  readonly last_contact_on: string;
}

/**
 * People of a team without an open referral whose last contact lies before a day, the longest ago first. Duplicates that
 * were merged belong to the record that they were merged into.
 */
export async function recordsWithoutContactSince(
  db: Executor,
  teamId: string,
  day: PlainDate,
  request: PageRequest,
): Promise<Page<RecordDue>> {
  const { after, limit } = request;
  const { rows } = await sql<Row>`
    select * from (${contactsOf(teamId)}) as contacts
    where last_contact_on < ${day} and open_referrals = 0
      and (last_contact_on, id) > (${after?.key ?? ''}, ${after?.id ?? ''})
    order by last_contact_on, id
    limit ${limit + 1}
  `.execute(db);
  return pageOf(rows.map(fromRow), request, ({ lastContactOn, patientId }) => ({
    key: lastContactOn,
    id: patientId,
  }));
}

/** When somebody of the team was last in contact, and whether a referral is open; null when there is no such person. */
export async function lastContactOf(
  db: Executor,
  teamId: string,
  patientId: string,
): Promise<(RecordDue & { readonly openReferrals: number }) | null> {
  const { rows } = await sql<Row>`
    select * from (${contactsOf(teamId)}) as contacts where id = ${patientId}
  `.execute(db);
  const [row] = rows;
  return row === undefined ? null : { ...fromRow(row), openReferrals: row.open_referrals };
}

/** The last contact of everybody: the latest of all dates of the record; of somebody without a referral, the registration. */
const contactsOf = (teamId: string) => sql`
  select patient.id, patient.version, family_name, given_name, born_on,
    count(distinct referral.id) as referrals,
    count(distinct case
      when referral.closed_on is null and referral.entered_in_error_at is null then referral.id
    end) as open_referrals,
    coalesce(max(contact.on_day), substr(patient.created_at, 1, 10)) as last_contact_on
  from patient
  left join referral on referral.patient_id = patient.id
  left join (
    select id as referral_id, received_on as on_day from referral
    union all select id, triaged_on from referral
    union all select id, exercise_plan_given_on from referral
    union all select id, closed_on from referral
    union all select referral_id, offered_on from offer
    union all select referral_id, appointment_on from offer
    union all select referral_id, responded_on from offer
    union all select referral_id, assessed_on from assessment
    union all select referral_id, week_starting_on from diary_week
    union all select referral_id, counted_on from counted_sessions
    union all select attendance.referral_id, session.held_on
      from attendance join session on session.id = attendance.session_id
  ) as contact on contact.referral_id = referral.id
  where patient.team_id = ${teamId} and patient.merged_into is null
  group by patient.id, patient.version, family_name, given_name, born_on, patient.created_at
`;

function fromRow(row: Row): RecordDue {
  return {
    patientId: row.id,
    version: row.version,
    familyName: row.family_name,
    givenName: row.given_name,
    bornOn: plainDate(row.born_on),
    referrals: row.referrals,
    lastContactOn: plainDate(row.last_contact_on),
  };
}
