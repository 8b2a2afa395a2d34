import { sql } from 'kysely';
import type { SessionRegister } from '../sessions/registers.js';
import type { Executor } from '../connection.js';

/** The ids under which one person is held: the record itself and duplicates that were merged into it, and their referrals. */
export interface PersonIds {
  readonly patientIds: readonly string[];
  readonly referralIds: readonly string[];
}

/** Finds everything that is held under a person's record. */
export async function idsOfPerson(db: Executor, patientId: string): Promise<PersonIds> {
  const patientIds = [patientId];
  for (const id of patientIds) {
    const merged = await db.selectFrom('patient').select('id').where('merged_into', '=', id).execute();
    patientIds.push(...merged.map((row) => row.id));
  }
  const referrals = await db
    .selectFrom('referral')
    .select('id')
    .where('patient_id', 'in', patientIds)
    .execute();
  return { patientIds, referralIds: referrals.map(({ id }) => id) };
}

/** Deletes every row of a person, former versions included; gives how many referrals and assessments that were. */
export async function deletePerson(
  db: Executor,
  { patientIds, ...ids }: PersonIds,
): Promise<{ readonly referrals: number; readonly assessments: number }> {
  const referralIds = orNone(ids.referralIds);
  const versions = await db
    .selectFrom('assessment')
    .select(['version_id', 'id'])
    .where('referral_id', 'in', referralIds)
    .execute();
  const versionIds = orNone(versions.map((row) => row.version_id));
  const assessmentIds = [...new Set(versions.map(({ id }) => id))];
  await forgetRequests(db, [...patientIds, ...referralIds, ...assessmentIds]);
  await forgetImports(db, [...patientIds, ...referralIds, ...assessmentIds]);
  for (const table of ['score', 'physical_test', 'questionnaire', 'sit_to_stand', 'walk_test'] as const) {
    await db.deleteFrom(table).where('assessment_version_id', 'in', versionIds).execute();
  }
  for (const table of ['acknowledgement', 'correction_draft'] as const) {
    await db.deleteFrom(table).where('assessment_id', 'in', orNone(assessmentIds)).execute();
  }
  await takeOffFormerRegisters(db, ids.referralIds);
  for (const table of [
    'assessment',
    'assessment_draft',
    'diary_week',
    'attendance',
    'counted_sessions',
    'offer',
    'referral_version',
    'patient_merge_referral',
  ] as const) {
    await db.deleteFrom(table).where('referral_id', 'in', referralIds).execute();
  }
  await forgetMerges(db, patientIds);
  await db.deleteFrom('referral').where('id', 'in', referralIds).execute();
  await db.deleteFrom('patient_version').where('patient_id', 'in', patientIds).execute();
  // Duplicates first: each leads to the record that it was merged into.
  for (const id of [...patientIds].reverse()) await db.deleteFrom('patient').where('id', '=', id).execute();
  return { referrals: ids.referralIds.length, assessments: assessmentIds.length };
}

/** A list that is never empty, as SQL wants it; no id is the empty text. */
function orNone(ids: readonly string[]): readonly string[] {
  return ids.length === 0 ? [''] : ids;
}

/** Answers that are kept to be given again show what a request made. */
async function forgetRequests(db: Executor, ids: readonly string[]): Promise<void> {
  await db.deleteFrom('request_key').where('subject_id', 'in', ids).execute();
}

/** The sheet from which the record was made holds it as well. */
async function forgetImports(db: Executor, ids: readonly string[]): Promise<void> {
  const parts = db.selectFrom('import_part').select('import_id').where('subject_id', 'in', ids);
  await db.updateTable('import').set({ file_content: null }).where('id', 'in', parts).execute();
  await db.deleteFrom('import_part').where('subject_id', 'in', ids).execute();
}

async function forgetMerges(db: Executor, patientIds: readonly string[]): Promise<void> {
  const ofPerson = await db
    .selectFrom('patient_merge')
    .select('id')
    .where((eb) => eb.or([eb('survivor_id', 'in', patientIds), eb('duplicate_id', 'in', patientIds)]))
    .execute();
  const ids = orNone(ofPerson.map(({ id }) => id));
  await db.deleteFrom('patient_merge_referral').where('merge_id', 'in', ids).execute();
  await db.deleteFrom('patient_merge').where('id', 'in', ids).execute();
}

/** Former states of a session hold its register as it was. */
async function takeOffFormerRegisters(db: Executor, referralIds: readonly string[]): Promise<void> {
  for (const referralId of referralIds) {
    const held = await db
      .selectFrom('session_version')
      .select(['session_id', 'version', 'document'])
      .where(sql<boolean>`document like ${`%${referralId}%`}`)
      .execute();
    for (const { session_id, version, document } of held) {
      const former = JSON.parse(document) as SessionRegister;
      const attendances = former.attendances.filter((entry) => entry.referralId !== referralId);
      await db
        .updateTable('session_version')
        .set({ document: JSON.stringify({ ...former, attendances }) })
        .where('session_id', '=', session_id)
        .where('version', '=', version)
        .execute();
    }
  }
}
