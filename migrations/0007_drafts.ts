import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/**
 * What has been typed of an assessment that is not recorded yet: one row for a referral and a timepoint. The row stays when
 * a draft has ended, empty, so that its number goes on and a device that still shows the former one is found out.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('assessment_draft')
    .addColumn('referral_id', 'text', (column) => column.notNull().references('referral.id'))
    .addColumn('timepoint', 'text', (column) =>
      column.notNull().check(sql`timepoint in ('baseline', 'discharge', 'follow-up')`),
    )
    .addColumn('version', 'integer', (column) => column.notNull().check(sql`version >= 1`))
    .addColumn('state', 'text', (column) =>
      column.notNull().check(sql`state in ('open', 'recorded', 'discarded')`),
    )
    .addColumn('fields', 'text', (column) => column.notNull().check(sql`state = 'open' or fields = '{}'`))
    .addColumn('saved_at', 'text', (column) => column.notNull())
    .addColumn('saved_by', 'text', (column) => column.notNull().references('account.id'))
    .addPrimaryKeyConstraint('assessment_draft_key', ['referral_id', 'timepoint'])
    .modifyEnd(sql`strict`)
    .execute();
}
