import type { Selectable } from 'kysely';
import { NHS_NUMBER_MISSING_REASONS } from '../../domain/patient/patient.js';
import type { Patient } from '../../domain/patient/patient.js';
import type { PatientMerge } from '../../domain/patient/merge.js';
import type { Executor } from '../connection.js';
import type { PatientMergeTable } from '../record-tables.js';
import { optionalMemberOf } from '../row-mapping.js';

/** Stores a merge with the referrals that it moved. */
export async function insertMerge(
  db: Executor,
  merge: PatientMerge & { readonly teamId: string },
): Promise<void> {
  await db
    .insertInto('patient_merge')
    .values({
      id: merge.id,
      team_id: merge.teamId,
      survivor_id: merge.survivorId,
      duplicate_id: merge.duplicateId,
      nhs_number_moved: Number(merge.isNhsNumberMoved),
      survivor_missing_reason: merge.survivorMissingReason,
      reason: merge.reason,
      merged_at: merge.mergedAt,
      merged_by: merge.mergedBy,
      undone_at: null,
      undone_by: null,
      undo_reason: null,
    })
    .execute();
  const rows = merge.referralIds.map((referral_id) => ({ merge_id: merge.id, referral_id }));
  if (rows.length > 0) await db.insertInto('patient_merge_referral').values(rows).execute();
}

/** Marks a merge as undone. */
export async function undoMergeRow(
  db: Executor,
  id: string,
  undone: NonNullable<PatientMerge['undone']>,
): Promise<void> {
  await db
    .updateTable('patient_merge')
    .set({ undone_at: undone.at, undone_by: undone.by, undo_reason: undone.reason })
    .where('id', '=', id)
    .execute();
}

/** The merges in which a record of the team took part, as survivor or as duplicate, earliest first. */
export async function mergesOfPatient(
  db: Executor,
  teamId: string,
  patientId: string,
): Promise<readonly PatientMerge[]> {
  const rows = await db
    .selectFrom('patient_merge')
    .selectAll()
    .where('team_id', '=', teamId)
    .where((eb) => eb.or([eb('survivor_id', '=', patientId), eb('duplicate_id', '=', patientId)]))
    .orderBy('id')
    .execute();
  const merges: PatientMerge[] = [];
  for (const row of rows) {
    const moved = await db
      .selectFrom('patient_merge_referral')
      .select('referral_id')
      .where('merge_id', '=', row.id)
      .orderBy('referral_id')
      .execute();
    merges.push(
      mergeFromRow(
        row,
        moved.map((each) => each.referral_id),
      ),
    );
  }
  return merges;
}

/** A patient as it was in a former version; null where there is no such version. */
export async function formerPatient(db: Executor, id: string, version: number): Promise<Patient | null> {
  const row = await db
    .selectFrom('patient_version')
    .select('document')
    .where('patient_id', '=', id)
    .where('version', '=', version)
    .executeTakeFirst();
  // Written by correctPatientRow only, from a patient as the domain has it.
  return row === undefined ? null : (JSON.parse(row.document) as Patient);
}

function mergeFromRow(row: Selectable<PatientMergeTable>, referralIds: readonly string[]): PatientMerge {
  const { undone_at: at, undone_by: by, undo_reason: reason } = row;
  return {
    id: row.id,
    survivorId: row.survivor_id,
    duplicateId: row.duplicate_id,
    isNhsNumberMoved: row.nhs_number_moved === 1,
    survivorMissingReason: optionalMemberOf(NHS_NUMBER_MISSING_REASONS, row.survivor_missing_reason),
    referralIds,
    reason: row.reason,
    mergedAt: row.merged_at,
    mergedBy: row.merged_by,
    undone: at === null || by === null || reason === null ? null : { at, by, reason },
  };
}
