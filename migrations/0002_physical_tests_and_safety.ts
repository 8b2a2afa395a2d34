import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/** Tests of strength, balance and speed; findings of the safety checklist, acknowledgements, and exercise diaries. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('physical_test')
    .addColumn('assessment_version_id', 'text', (column) =>
      column.notNull().references('assessment.version_id'),
    )
    .addColumn('test', 'text', (column) => column.notNull())
    .addColumn('place', 'text', (column) => column.notNull().check(sql`place in ('course', 'home')`))
    .addColumn('conditions', 'text', (column) => column.notNull())
    .addColumn('parts', 'text')
    .addColumn('measure', 'text')
    .addColumn('numerator', 'integer')
    .addColumn('denominator', 'integer', (column) => column.check(sql`denominator >= 1`))
    .addColumn('basis', 'text', (column) => column.check(sql`basis in ('parts', 'typed')`))
    .addColumn('not_done_reason', 'text', (column) =>
      column.check(
        sql`not_done_reason in ('declined', 'not-safe', 'unable', 'no-time', 'no-equipment', 'not-offered', 'language', 'other')`,
      ),
    )
    .addCheckConstraint(
      'physical_test_result_whole',
      sql`(measure is null) = (numerator is null) and (measure is null) = (denominator is null) and (measure is null) = (basis is null)`,
    )
    .addCheckConstraint(
      'physical_test_result_or_reason',
      sql`not_done_reason is null or (measure is null and parts is null)`,
    )
    .addPrimaryKeyConstraint('physical_test_key', ['assessment_version_id', 'test'])
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .alterTable('assessment')
    .addColumn('safety_findings', 'text', (column) => column.notNull().defaultTo('[]'))
    .execute();
  await db.schema
    .createTable('acknowledgement')
    .addColumn('id', 'text', (column) => column.primaryKey().notNull())
    .addColumn('assessment_id', 'text', (column) => column.notNull())
    .addColumn('caution_id', 'text', (column) => column.notNull())
    .addColumn('measure_id', 'text')
    .addColumn('action_taken', 'text', (column) => column.notNull())
    .addColumn('acknowledged_at', 'text', (column) => column.notNull())
    .addColumn('acknowledged_by', 'text', (column) => column.notNull().references('account.id'))
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createIndex('acknowledgement_by_assessment')
    .on('acknowledgement')
    .columns(['assessment_id', 'caution_id'])
    .execute();
  await db.schema
    .createTable('diary_week')
    .addColumn('id', 'text', (column) => column.primaryKey().notNull())
    .addColumn('referral_id', 'text', (column) => column.notNull().references('referral.id'))
    .addColumn('week_starting_on', 'text', (column) =>
      column.notNull().check(sql`week_starting_on like '____-__-__'`),
    )
    .addColumn('sessions_reported', 'integer', (column) =>
      column.notNull().check(sql`sessions_reported between 0 and 21`),
    )
    .addColumn('recorded_at', 'text', (column) => column.notNull())
    .addColumn('recorded_by', 'text', (column) => column.notNull().references('account.id'))
    .addColumn('superseded_at', 'text')
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createIndex('diary_week_current')
    .unique()
    .on('diary_week')
    .columns(['referral_id', 'week_starting_on'])
    .where(sql<boolean>`superseded_at is null`)
    .execute();
}
