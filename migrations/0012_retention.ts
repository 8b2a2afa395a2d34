import { sql } from 'kysely';
import type { Kysely } from 'kysely';

/**
 * When a record is deleted, what the trail repeats of it goes too, and nothing else of the trail can change.
 *
 * A salt is hashed with the details of an entry: once both are gone, nobody can find out by trying which values the hash
 * was made from.
 */
export async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema.alterTable('audit_event').addColumn('details_salt', 'text').execute();
  await sql`drop trigger audit_event_no_update`.execute(db);
  const unchanged = KEPT_COLUMNS.map((column) => `new.${column} is old.${column}`).join(' and ');
  await sql`
    create trigger audit_event_no_update before update on audit_event
    when not (new.details = '{"removed":"retention"}' and new.details_salt is null and ${sql.raw(unchanged)})
    begin select raise(abort, 'the audit trail is append-only'); end
  `.execute(db);
}

const KEPT_COLUMNS = [
  'sequence',
  'occurred_at',
  'team_id',
  'account_id',
  'role',
  'action',
  'patient_id',
  'referral_id',
  'subject_id',
  'previous_hash',
  'hash',
];
