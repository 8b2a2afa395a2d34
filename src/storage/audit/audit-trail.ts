import { hash } from 'node:crypto';
import type { Selectable } from 'kysely';
import { chainedText, FIRST_PREVIOUS_HASH } from '../../domain/audit/audit-event.js';
import type { AuditEvent } from '../../domain/audit/audit-event.js';
import { composedOnce } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { rowsInto } from '../rows-into.js';
import { pageOf } from '../page.js';
import type { Page, PageRequest } from '../page.js';
import type { AuditEventTable } from '../tables.js';

/**
 * Adds an event to the trail, chained to the one before. Call it in the transaction of what it tells.
 */
export async function appendAuditEvent(
  db: Executor,
  event: Omit<AuditEvent, 'sequence' | 'previousHash' | 'hash'>,
): Promise<void> {
  const [last] = await lastEvent(db, {});
  const chained = {
    ...event,
    sequence: (last?.sequence ?? 0) + 1,
    previousHash: last?.hash ?? FIRST_PREVIOUS_HASH,
  };
  await intoAuditEvent(db, [
    {
      sequence: chained.sequence,
      occurred_at: chained.occurredAt,
      team_id: chained.teamId,
      account_id: chained.accountId,
      role: chained.role,
      action: chained.action,
      patient_id: chained.patientId,
      referral_id: chained.referralId,
      subject_id: chained.subjectId,
      details: chained.details,
      previous_hash: chained.previousHash,
      hash: hashOf(chained),
    },
  ]);
}

const intoAuditEvent = rowsInto('audit_event');

const lastEvent = composedOnce((db) =>
  db.selectFrom('audit_event').select(['sequence', 'hash']).orderBy('sequence', 'desc').limit(1),
);

/** What the verification of the trail found. */
export type TrailVerdict =
  | { readonly kind: 'intact'; readonly events: number }
  | { readonly kind: 'broken'; readonly sequence: number; readonly reason: string };

const BATCH = 1000;

/** Follows the chain from its first entry and names the first that does not hold. */
export async function verifyAuditTrail(db: Executor): Promise<TrailVerdict> {
  let [previousHash, sequence] = [FIRST_PREVIOUS_HASH, 0];
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
      if (event.hash !== hashOf(event)) return broken(expected, 'its content was changed');
      [previousHash, sequence] = [event.hash, expected];
    }
    if (rows.length < BATCH) return { kind: 'intact', events: sequence };
  }
}

/** What the trail is searched by. */
export interface AuditFilter {
  readonly accountId: string | null;
  readonly patientId: string | null;
  /** UTC instants, from included, to not. */
  readonly from: string | null;
  readonly to: string | null;
}

/** The events of a team, latest first. */
export async function listAuditEvents(
  db: Executor,
  teamId: string,
  filter: AuditFilter,
  request: PageRequest,
): Promise<Page<AuditEvent>> {
  let query = db.selectFrom('audit_event').selectAll().where('team_id', '=', teamId);
  if (filter.accountId !== null) query = query.where('account_id', '=', filter.accountId);
  if (filter.patientId !== null) query = query.where('patient_id', '=', filter.patientId);
  if (filter.from !== null) query = query.where('occurred_at', '>=', filter.from);
  if (filter.to !== null) query = query.where('occurred_at', '<', filter.to);
  if (request.after !== null) query = query.where('sequence', '<', Number(request.after.id));
  const rows = await query
    .orderBy('sequence', 'desc')
    .limit(request.limit + 1)
    .execute();
  return pageOf(rows.map(eventFromRow), request, (event) => ({ key: '', id: String(event.sequence) }));
}

function hashOf(event: Omit<AuditEvent, 'hash'>): string {
  return hash('sha256', chainedText(event));
}

function broken(sequence: number, reason: string): TrailVerdict {
  return { kind: 'broken', sequence, reason };
}

function eventFromRow(row: Selectable<AuditEventTable>): AuditEvent {
  return {
    sequence: row.sequence,
    occurredAt: row.occurred_at,
    teamId: row.team_id,
    accountId: row.account_id,
    role: row.role,
    action: row.action,
    patientId: row.patient_id,
    referralId: row.referral_id,
    subjectId: row.subject_id,
    details: row.details,
    previousHash: row.previous_hash,
    hash: row.hash,
  };
}
