import { sql } from 'kysely';
import type { ColumnDefinitionBuilder, Kysely } from 'kysely';

/** Corrections: versions of sessions, who made a first version, entries made in error, and records that were merged. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await nameTheFirstAuthor(db);
  await keepVersionsOfSessions(db);
  for (const table of ['referral', 'offer', 'session', 'assessment']) await markEntriesInError(db, table);
  await openAgainBesideEntriesInError(db);
  await createMerges(db);
}

/** Who registered a patient or a referral was told to the audit trail only. */
async function nameTheFirstAuthor(db: Kysely<unknown>): Promise<void> {
  for (const table of ['patient', 'referral', 'session']) {
    await addColumn(db, table, 'created_by', (column) => column.references('account.id'));
  }
  await addColumn(db, 'settings', 'created_by', (column) => column.references('account.id'));
  await addColumn(db, 'settings', 'reason', (column) => column);
  await sql`
    update patient set created_by = (
      select account_id from audit_event
      where audit_event.patient_id = patient.id and audit_event.action = 'patient-registered'
    )
  `.execute(db);
  await sql`
    update referral set created_by = (
      select account_id from audit_event
      where audit_event.patient_id = referral.patient_id and audit_event.referral_id = referral.id
        and audit_event.action = 'referral-registered'
    )
  `.execute(db);
}

async function keepVersionsOfSessions(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .alterTable('session')
    .addColumn('version', 'integer', (column) =>
      column
        .notNull()
        .defaultTo(1)
        .check(sql`version >= 1`),
    )
    .execute();
  await db.schema
    .createTable('session_version')
    .addColumn('session_id', 'text', (column) => column.notNull().references('session.id'))
    .addColumn('version', 'integer', (column) => column.notNull())
    .addColumn('document', 'text', (column) => column.notNull())
    .addColumn('superseded_at', 'text', (column) => column.notNull())
    .addColumn('superseded_by', 'text', (column) => column.notNull().references('account.id'))
    .addColumn('reason', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('session_version_key', ['session_id', 'version'])
    .modifyEnd(sql`strict`)
    .execute();
}

/** An entry in error has an instant, an author and a reason, or none of the three. */
async function markEntriesInError(db: Kysely<unknown>, table: string): Promise<void> {
  await addColumn(db, table, 'entered_in_error_at', (column) => column);
  await addColumn(db, table, 'entered_in_error_by', (column) =>
    column.references('account.id').check(sql`(entered_in_error_by is null) = (entered_in_error_at is null)`),
  );
  await addColumn(db, table, 'entered_in_error_reason', (column) =>
    column.check(sql`(entered_in_error_reason is null) = (entered_in_error_at is null)`),
  );
}

/** A referral entered in error is no open referral; the few of them are counted without reading all the others. */
async function openAgainBesideEntriesInError(db: Kysely<unknown>): Promise<void> {
  await db.schema.dropIndex('referral_one_open').execute();
  await db.schema
    .createIndex('referral_one_open')
    .unique()
    .on('referral')
    .column('patient_id')
    .where(sql<boolean>`closed_on is null and entered_in_error_at is null`)
    .execute();
  const dates = { referral: 'received_on', session: 'held_on', assessment: 'assessed_on' };
  for (const [table, date] of Object.entries(dates)) {
    await db.schema
      .createIndex(`${table}_in_error`)
      .on(table)
      .columns(['team_id', date])
      .where(sql<boolean>`entered_in_error_at is not null`)
      .execute();
  }
}

async function createMerges(db: Kysely<unknown>): Promise<void> {
  await addColumn(db, 'patient', 'merged_into', (column) =>
    column.references('patient.id').check(sql`merged_into <> id`),
  );
  await db.schema
    .createTable('patient_merge')
    .addColumn('id', 'text', (column) => column.primaryKey().notNull())
    .addColumn('team_id', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('survivor_id', 'text', (column) => column.notNull().references('patient.id'))
    .addColumn('duplicate_id', 'text', (column) => column.notNull().references('patient.id'))
    .addColumn('nhs_number_moved', 'integer', (column) =>
      column.notNull().check(sql`nhs_number_moved in (0, 1)`),
    )
    // What the survivor gave as the reason for having no number, so that it can be given back.
    .addColumn('survivor_missing_reason', 'text')
    .addColumn('reason', 'text', (column) => column.notNull())
    .addColumn('merged_at', 'text', (column) => column.notNull())
    .addColumn('merged_by', 'text', (column) => column.notNull().references('account.id'))
    .addColumn('undone_at', 'text')
    .addColumn('undone_by', 'text', (column) =>
      column.references('account.id').check(sql`(undone_by is null) = (undone_at is null)`),
    )
    .addColumn('undo_reason', 'text', (column) =>
      column.check(sql`(undo_reason is null) = (undone_at is null)`),
    )
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createIndex('patient_merge_by_survivor')
    .on('patient_merge')
    .column('survivor_id')
    .execute();
  await db.schema
    .createIndex('patient_merge_standing')
    .unique()
    .on('patient_merge')
    .column('duplicate_id')
    .where(sql<boolean>`undone_at is null`)
    .execute();
  await db.schema
    .createTable('patient_merge_referral')
    .addColumn('merge_id', 'text', (column) => column.notNull().references('patient_merge.id'))
    .addColumn('referral_id', 'text', (column) => column.notNull().references('referral.id'))
    .addPrimaryKeyConstraint('patient_merge_referral_key', ['merge_id', 'referral_id'])
    .modifyEnd(sql`strict`)
    .execute();
}

async function addColumn(
  db: Kysely<unknown>,
  table: string,
  name: string,
  build: (column: ColumnDefinitionBuilder) => ColumnDefinitionBuilder,
): Promise<void> {
  await db.schema.alterTable(table).addColumn(name, 'text', build).execute();
}
