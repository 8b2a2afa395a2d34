import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/** The audit trail: who did, read or was refused what; append-only, each entry chained to the one before. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('audit_event')
    .addColumn('sequence', 'integer', (column) => column.primaryKey().notNull())
    .addColumn('occurred_at', 'text', (column) => column.notNull())
    .addColumn('team_id', 'text')
    .addColumn('account_id', 'text')
    .addColumn('role', 'text')
    .addColumn('action', 'text', (column) => column.notNull())
    .addColumn('patient_id', 'text')
    .addColumn('referral_id', 'text')
    .addColumn('subject_id', 'text')
    .addColumn('details', 'text', (column) => column.notNull())
    .addColumn('previous_hash', 'text', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createIndex('audit_event_by_time')
    .on('audit_event')
    .columns(['team_id', 'occurred_at', 'sequence'])
    .execute();
  await db.schema
    .createIndex('audit_event_by_patient')
    .on('audit_event')
    .columns(['patient_id', 'sequence'])
    .execute();
  await db.schema
    .createIndex('audit_event_by_account')
    .on('audit_event')
    .columns(['account_id', 'sequence'])
    .execute();
  for (const change of ['update', 'delete']) {
    await sql`
      create trigger ${sql.raw(`audit_event_no_${change}`)} before ${sql.raw(change)} on audit_event
      begin select raise(abort, 'the audit trail is append-only'); end
    `.execute(db);
  }
}
