import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/**
 * Requests that may be sent again: who used which key for what, and the answer that was given; and one row that is written
 * to learn whether the record can be written.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('request_key')
    .addColumn('account_id', 'text', (column) => column.notNull().references('account.id'))
    .addColumn('key', 'text', (column) => column.notNull().check(sql`length(key) between 1 and 200`))
    .addColumn('request_hash', 'text', (column) => column.notNull())
    .addColumn('request_id', 'text', (column) => column.notNull())
    .addColumn('subject_id', 'text')
    .addColumn('status', 'integer', (column) => column.check(sql`status >= 200 and status < 400`))
    .addColumn('content_type', 'text')
    .addColumn('location', 'text')
    .addColumn('etag', 'text')
    .addColumn('body', 'text')
    .addColumn('created_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('request_key_key', ['account_id', 'key'])
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createTable('write_probe')
    .addColumn('id', 'integer', (column) =>
      column
        .primaryKey()
        .notNull()
        .check(sql`id = 1`),
    )
    .addColumn('probed_at', 'text', (column) => column.notNull())
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema.createIndex('request_key_by_time').on('request_key').column('created_at').execute();
}
