import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/**
 * What has been typed of a correction that is not recorded yet: one row for an assessment, with the version of it that the
 * typing began with. As with other drafts the row stays, empty, when the draft has ended, so that its number goes on.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('correction_draft')
    .addColumn('assessment_id', 'text', (column) => column.primaryKey().notNull())
    .addColumn('assessment_version', 'integer', (column) =>
      column.notNull().check(sql`assessment_version >= 1`),
    )
    .addColumn('version', 'integer', (column) => column.notNull().check(sql`version >= 1`))
    .addColumn('state', 'text', (column) =>
      column.notNull().check(sql`state in ('open', 'recorded', 'discarded')`),
    )
    .addColumn('fields', 'text', (column) => column.notNull().check(sql`state = 'open' or fields = '{}'`))
    .addColumn('saved_at', 'text', (column) => column.notNull())
    .addColumn('saved_by', 'text', (column) => column.notNull().references('account.id'))
    .modifyEnd(sql`strict`)
    .execute();
}
