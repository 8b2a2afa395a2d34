import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/** The few offers that were entered in error are counted without reading all the others. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createIndex('offer_in_error')
    .on('offer')
    .column('offered_on')
    .where(sql<boolean>`entered_in_error_at is not null`)
    .execute();
}
