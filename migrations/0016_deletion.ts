import type { Kysely } from 'kysely';

/**
 * Whoever is deleted, or taken out again with an import, is looked for among those merged into others: without an index the
 * store looked through all people for each, and through all diaries for each of their referrals.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createIndex('patient_by_merged_into')
    .on('patient')
    .column('merged_into')
    .where('merged_into', 'is not', null)
    .execute();
  await db.schema
    .createIndex('patient_merge_by_duplicate')
    .on('patient_merge')
    .column('duplicate_id')
    .execute();
  await db.schema
    .createIndex('patient_merge_referral_by_referral')
    .on('patient_merge_referral')
    .column('referral_id')
    .execute();
  await db.schema.createIndex('diary_week_by_referral').on('diary_week').column('referral_id').execute();
}
