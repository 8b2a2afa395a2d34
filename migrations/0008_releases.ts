import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/**
 * Anonymised summaries as they were released. A release is frozen: its text, its files, the counts behind it and the result
 * of the attack never change; it can be withdrawn, once, and stays readable.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('release')
    .addColumn('number', 'integer', (column) => column.primaryKey().notNull())
    .addColumn('team_id', 'text', (column) => column.notNull().references('team.id'))
    .addColumn('commissioner_id', 'text', (column) => column.notNull().references('commissioner.id'))
    .addColumn('financial_year', 'text', (column) => column.notNull())
    .addColumn('period', 'text', (column) => column.notNull())
    .addColumn('mode', 'text', (column) => column.notNull().check(sql`mode in ('rounded', 'exact')`))
    .addColumn('corrects', 'integer', (column) => column.unique().references('release.number'))
    .addColumn('document', 'text', (column) => column.notNull())
    .addColumn('digest', 'text', (column) => column.notNull())
    .addColumn('counts', 'text', (column) => column.notNull())
    .addColumn('counts_digest', 'text', (column) => column.notNull())
    .addColumn('attack', 'text', (column) => column.notNull())
    .addColumn('attacked_at', 'text', (column) => column.notNull())
    .addColumn('released_at', 'text', (column) => column.notNull())
    .addColumn('released_by', 'text', (column) => column.notNull().references('account.id'))
    .addColumn('withdrawn_at', 'text')
    .addColumn('withdrawn_by', 'text', (column) => column.references('account.id'))
    .addColumn('withdrawal_reason', 'text', (column) =>
      column.check(sql`(withdrawn_at is null) = (withdrawal_reason is null)`),
    )
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createIndex('release_by_team')
    .on('release')
    .columns(['team_id', 'financial_year', 'number'])
    .execute();
  await db.schema
    .createIndex('release_by_commissioner')
    .on('release')
    .columns(['commissioner_id', 'number'])
    .execute();
  await db.schema
    .createTable('release_file')
    .addColumn('number', 'integer', (column) => column.notNull().references('release.number'))
    .addColumn('form', 'text', (column) =>
      column.notNull().check(sql`form in ('csv', 'xlsx', 'pdf', 'fhir')`),
    )
    .addColumn('content', 'blob', (column) => column.notNull())
    .addColumn('digest', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('release_file_key', ['number', 'form'])
    .modifyEnd(sql`strict`)
    .execute();
  await freeze(db);
}

async function freeze(db: Kysely<unknown>): Promise<void> {
  for (const [table, change] of [
    ['release', 'delete'],
    ['release_file', 'delete'],
    ['release_file', 'update'],
  ] as const) {
    await sql`
      create trigger ${sql.raw(`${table}_no_${change}`)} before ${sql.raw(change)} on ${sql.raw(table)}
      begin select raise(abort, 'a release is frozen'); end
    `.execute(db);
  }
  await sql`
    create trigger release_is_frozen before update on release
    when old.withdrawn_at is not null or new.withdrawn_at is null
      or new.number is not old.number or new.team_id is not old.team_id
      or new.commissioner_id is not old.commissioner_id or new.financial_year is not old.financial_year
      or new.period is not old.period or new.mode is not old.mode or new.corrects is not old.corrects
      or new.document is not old.document or new.digest is not old.digest
      or new.counts is not old.counts or new.counts_digest is not old.counts_digest
      or new.attack is not old.attack or new.attacked_at is not old.attacked_at
      or new.released_at is not old.released_at or new.released_by is not old.released_by
    begin select raise(abort, 'a release is frozen'); end
  `.execute(db);
}
