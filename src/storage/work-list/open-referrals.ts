import { DIAGNOSES } from '../../domain/referral/closed-sets.js';
import type { Diagnosis } from '../../domain/referral/closed-sets.js';
import type { Executor } from '../connection.js';
import { memberOf } from '../row-mapping.js';

/** An open referral and whose it is. */
export interface OpenReferral {
  readonly id: string;
  readonly patientId: string;
  readonly siteId: string;
  readonly diagnosis: Diagnosis;
  readonly familyName: string;
  readonly givenName: string;
}

/** The open referrals of a team with their people. The work grows with the open ones: they are a range of an index. */
export async function openReferrals(db: Executor, teamId: string): Promise<readonly OpenReferral[]> {
  const rows = await db
    .selectFrom('referral')
    .innerJoin('patient', 'patient.id', 'referral.patient_id')
    .select([
      'referral.id',
      'referral.patient_id',
      'referral.site_id',
      'referral.diagnosis',
      'patient.family_name',
      'patient.given_name',
    ])
    .where('referral.team_id', '=', teamId)
    .where('referral.closed_on', 'is', null)
    .where('referral.entered_in_error_at', 'is', null)
    .orderBy('referral.id')
    .execute();
  return rows.map((row) => ({
    id: row.id,
    patientId: row.patient_id,
    siteId: row.site_id,
    diagnosis: memberOf(DIAGNOSES, row.diagnosis),
    familyName: row.family_name,
    givenName: row.given_name,
  }));
}

/** Those of some patients for whom the team has another record with the same family name and date of birth. */
export async function patientsWithLikeRecord(
  db: Executor,
  teamId: string,
  patientIds: readonly string[],
): Promise<ReadonlySet<string>> {
  if (patientIds.length === 0) return new Set();
  const rows = await db
    .selectFrom('patient')
    .innerJoin('patient as other', (join) =>
      join
        .onRef('other.team_id', '=', 'patient.team_id')
        .onRef('other.family_name_key', '=', 'patient.family_name_key')
        .onRef('other.born_on', '=', 'patient.born_on')
        .onRef('other.id', '<>', 'patient.id')
        .on('other.merged_into', 'is', null),
    )
    .select('patient.id')
    .distinct()
    .where('patient.team_id', '=', teamId)
    .where('patient.id', 'in', patientIds)
    .execute();
  return new Set(rows.map((row) => row.id));
}
