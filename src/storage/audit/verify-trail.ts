import { FIRST_PREVIOUS_HASH, REMOVED_DETAILS } from '../../domain/audit/audit-event.js';
import type { AuditEvent } from '../../domain/audit/audit-event.js';
import type { Executor } from '../connection.js';
import { eventFromRow, hashOf } from './audit-trail.js';
import { digestOf } from './removed-details.js';
import type { RemovedEntries } from './removed-details.js';

/** What the verification of the trail found. */
export type TrailVerdict =
  | { readonly kind: 'intact'; readonly events: number }
  | { readonly kind: 'broken'; readonly sequence: number; readonly reason: string };

const BATCH = 1000;

/**
 * Follows the chain from its first entry and names the first that does not hold.
 *
 * Details may have been removed with a record that was deleted. Such an entry holds if a later one, which tells of the
 * deletion and holds itself, names it with the digest of what is left.
 */
export async function verifyAuditTrail(db: Executor): Promise<TrailVerdict> {
  let [previousHash, sequence] = [FIRST_PREVIOUS_HASH, 0];
  const removed = new Map<number, AuditEvent>();
  for (;;) {
    const rows = await db
      .selectFrom('audit_event')
      .selectAll()
      .where('sequence', '>', sequence)
      .orderBy('sequence')
      .limit(BATCH)
      .execute();
    for (const event of rows.map(eventFromRow)) {
      const expected = sequence + 1;
      if (event.sequence !== expected) return broken(expected, 'the entry is missing');
      if (event.previousHash !== previousHash)
        return broken(expected, 'it is not chained to the entry before');
      if (event.hash !== hashOf(event)) {
        if (event.details !== REMOVED_DETAILS) return broken(expected, 'its content was changed');
        removed.set(expected, event);
      }
      if (event.action === 'record-deleted') accountFor(removed, event);
      [previousHash, sequence] = [event.hash, expected];
    }
    if (rows.length < BATCH) break;
  }
  const [unaccounted] = removed.keys();
  return unaccounted === undefined
    ? { kind: 'intact', events: sequence }
    : broken(unaccounted, 'its details were removed, and no deletion tells of it');
}

/** Strikes off those entries that a deletion names, if they are still as it left them. */
function accountFor(removed: Map<number, AuditEvent>, deletion: AuditEvent): void {
  // Written by the deletion of a record only, and sealed by the hash of its entry.
  const { removedEntries } = JSON.parse(deletion.details) as { removedEntries: RemovedEntries };
  const named = removedEntries.sequences.map((sequence) => removed.get(sequence));
  const events = named.filter((event) => event !== undefined);
  if (events.length !== named.length || digestOf(events) !== removedEntries.digest) return;
  for (const { sequence } of events) removed.delete(sequence);
}

function broken(sequence: number, reason: string): TrailVerdict {
  return { kind: 'broken', sequence, reason };
}
