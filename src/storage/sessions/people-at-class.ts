import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Executor } from '../connection.js';

/** A referral with the name of its person. */
export interface NamedReferral {
  readonly referralId: string;
  readonly patientId: string;
  readonly familyName: string;
  readonly givenName: string;
}

/**
 * The referrals of a team that were open on a day, and those of a register, by name.
 *
 * @param people `siteId` null for every site; `onRegister` are ids that are wanted whatever their site and dates
 */
export async function peopleAtClass(
  db: Executor,
  teamId: string,
  people: {
    readonly siteId: string | null;
    readonly heldOn: PlainDate;
    readonly onRegister: readonly string[];
  },
): Promise<readonly NamedReferral[]> {
  const { siteId, heldOn, onRegister } = people;
  const rows = await db
    .selectFrom('referral')
    .innerJoin('patient', 'patient.id', 'referral.patient_id')
    .select(['referral.id', 'referral.patient_id', 'patient.family_name', 'patient.given_name'])
    .where('referral.team_id', '=', teamId)
    .where((eb) =>
      eb.or([
        eb.and([
          eb('referral.received_on', '<=', heldOn),
          eb.or([eb('referral.closed_on', 'is', null), eb('referral.closed_on', '>=', heldOn)]),
          ...(siteId === null ? [] : [eb('referral.site_id', '=', siteId)]),
        ]),
        ...(onRegister.length === 0 ? [] : [eb('referral.id', 'in', onRegister)]),
      ]),
    )
    .orderBy('patient.family_name_key')
    .orderBy('patient.given_name')
    .orderBy('referral.id')
    .execute();
  return rows.map((row) => ({
    referralId: row.id,
    patientId: row.patient_id,
    familyName: row.family_name,
    givenName: row.given_name,
  }));
}
