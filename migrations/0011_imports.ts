import { sql } from 'kysely';
import type { ColumnDefinitionBuilder, Kysely } from 'kysely';

/** Sheets that teams bring in: the files on their way, what came of them, and sessions that are known by their counts only. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('import')
    .addColumn('id', 'text', primaryKey)
    .addColumn('team_id', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('version', 'integer', (column) => column.notNull().check(sql`version >= 1`))
    .addColumn('state', 'text', (column) =>
      column.notNull().check(sql`state in ('draft', 'done', 'discarded', 'undone')`),
    )
    .addColumn('file_name', 'text', required)
    .addColumn('file_digest', 'text', required)
    // The file itself, as long as it is needed; nothing of it stays when the import is discarded or undone.
    .addColumn('file_content', 'blob')
    .addColumn('choices', 'text', required)
    .addColumn('result', 'text')
    .addColumn('created_at', 'text', required)
    .addColumn('created_by', 'text', ofAccount)
    .addColumn('done_at', 'text')
    .addColumn('undone_at', 'text')
    .addCheckConstraint('import_done', sql`(done_at is null) = (state in ('draft', 'discarded'))`)
    .addCheckConstraint('import_undone', sql`(undone_at is null) = (state <> 'undone')`)
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema.createIndex('import_of_team').on('import').columns(['team_id', 'id']).execute();
  await db.schema
    .createTable('import_part')
    .addColumn('import_id', 'text', (column) => column.notNull().references('import.id'))
    .addColumn('kind', 'text', (column) =>
      column
        .notNull()
        .check(sql`kind in ('patient', 'referral', 'triage', 'sessions', 'assessment', 'closure')`),
    )
    .addColumn('subject_id', 'text', required)
    .addColumn('row_number', 'integer', required)
    .addPrimaryKeyConstraint('import_part_key', ['import_id', 'kind', 'subject_id'])
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createTable('import_choices')
    .addColumn('team_id', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('headings_digest', 'text', required)
    .addColumn('choices', 'text', required)
    .addColumn('saved_at', 'text', required)
    .addPrimaryKeyConstraint('import_choices_key', ['team_id', 'headings_digest'])
    .modifyEnd(sql`strict`)
    .execute();
  await createCountedSessions(db);
}

/** Supervised sessions of a course that began before the team kept registers here: their counts, and the first and last day. */
async function createCountedSessions(db: Kysely<unknown>): Promise<void> {
  const count: Column = (column) => column.notNull().check(sql`attended >= 0`);
  await db.schema
    .createTable('counted_sessions')
    .addColumn('referral_id', 'text', (column) => column.primaryKey().notNull().references('referral.id'))
    .addColumn('team_id', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('started_on', 'text')
    .addColumn('counted_on', 'text', required)
    .addColumn('attended', 'integer', count)
    .addColumn('did_not_attend', 'integer', required)
    .addColumn('cancelled_by_patient', 'integer', required)
    .addColumn('cancelled_by_service', 'integer', required)
    .addColumn('created_at', 'text', required)
    .addColumn('created_by', 'text', ofAccount)
    .addCheckConstraint('counted_start', sql`(started_on is null) = (attended = 0)`)
    .addCheckConstraint(
      'counted_none_below_nothing',
      sql`did_not_attend >= 0 and cancelled_by_patient >= 0 and cancelled_by_service >= 0`,
    )
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createIndex('counted_sessions_by_start')
    .on('counted_sessions')
    .columns(['team_id', 'started_on'])
    .execute();
}

type Column = (column: ColumnDefinitionBuilder) => ColumnDefinitionBuilder;

const required: Column = (column) => column.notNull();
const primaryKey: Column = (column) => column.primaryKey().notNull();
const ofAccount: Column = (column) => column.notNull().references('account.id');
