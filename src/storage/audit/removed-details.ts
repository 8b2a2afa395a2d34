import { hash } from 'node:crypto';
import { chainedText, REMOVED_DETAILS } from '../../domain/audit/audit-event.js';
import type { AuditEvent } from '../../domain/audit/audit-event.js';
import type { Executor } from '../connection.js';
import type { PersonIds } from '../retention/delete-person.js';
import { eventFromRow } from './audit-trail.js';

/**
 * Entries of which the details were removed, as the entry that tells of the deletion names them: with a digest of what is
 * left of them, so that who, when and what stay as sure as the rest of the chain.
 */
export interface RemovedEntries {
  readonly sequences: readonly number[];
  readonly digest: string;
}

/**
 * Removes what the trail repeats of a person: the details of every entry about them. Who did what, and when, stays.
 *
 * @returns what must be told in the entry of the deletion, or the trail no longer verifies
 */
export async function removeDetailsOf(
  db: Executor,
  { patientIds, referralIds }: PersonIds,
): Promise<RemovedEntries> {
  const rows = await db
    .selectFrom('audit_event')
    .selectAll()
    .where((eb) => eb.or([eb('patient_id', 'in', patientIds), eb('referral_id', 'in', ['', ...referralIds])]))
    .where('details', 'not in', ['{}', REMOVED_DETAILS])
    .orderBy('sequence')
    .execute();
  const sequences = rows.map(({ sequence }) => sequence);
  const removed = { details: REMOVED_DETAILS, details_salt: null };
  await db
    .updateTable('audit_event')
    .set(removed)
    .where('sequence', 'in', [0, ...sequences])
    .execute();
  return { sequences, digest: digestOf(rows.map((row) => eventFromRow({ ...row, ...removed }))) };
}

/** The digest of what is left of entries. */
export function digestOf(events: readonly AuditEvent[]): string {
  return hash('sha256', JSON.stringify(events.map((event) => [chainedText(event), event.hash])));
}
