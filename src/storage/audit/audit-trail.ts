import { hash, randomBytes } from 'node:crypto';
import type { Insertable, Selectable } from 'kysely';
import { chainedText, FIRST_PREVIOUS_HASH } from '../../domain/audit/audit-event.js';
import type { AuditEvent } from '../../domain/audit/audit-event.js';
import { composedOnce } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { rowsInto } from '../rows-into.js';
import type { AuditEventTable } from '../tables.js';

/** An event as it is told, before it has its place in the chain. */
export type UnchainedEvent = Omit<AuditEvent, 'sequence' | 'detailsSalt' | 'previousHash' | 'hash'>;

/**
 * Adds an event to the trail, chained to the one before. Call it in the transaction of what it tells.
 */
export async function appendAuditEvent(db: Executor, event: UnchainedEvent): Promise<void> {
  await appendAuditEvents(db, [event]);
}

/** Adds events to the trail in their order, each chained to the one before: at most a few hundred. */
export async function appendAuditEvents(db: Executor, events: readonly UnchainedEvent[]): Promise<void> {
  let { sequence, hash: previousHash } = await endOfTrail(db);
  const rows = events.map((event) => {
    sequence += 1;
    const chained = { ...event, sequence, detailsSalt: newSalt(), previousHash };
    previousHash = hashOf(chained);
    return rowOf({ ...chained, hash: previousHash });
  });
  await intoAuditEvent(db, rows);
}

/** The number and the hash of the last entry: what the next one is chained to. */
export async function endOfTrail(
  db: Executor,
): Promise<{ readonly sequence: number; readonly hash: string }> {
  const [last] = await lastEvent(db, {});
  return last ?? { sequence: 0, hash: FIRST_PREVIOUS_HASH };
}

const SALT_BYTES = 16;
/** Random bytes are drawn for many salts at once: to ask for a few is dear. */
const DRAWN_BYTES = 256 * SALT_BYTES;
let [drawn, used] = [Buffer.alloc(0), 0];

function newSalt(): string {
  if (used >= drawn.length) [drawn, used] = [randomBytes(DRAWN_BYTES), 0];
  used += SALT_BYTES;
  return drawn.toString('hex', used - SALT_BYTES, used);
}

const intoAuditEvent = rowsInto('audit_event');

const lastEvent = composedOnce((db) =>
  db.selectFrom('audit_event').select(['sequence', 'hash']).orderBy('sequence', 'desc').limit(1),
);

/** The hash of an entry as it stands. */
export function hashOf(event: Omit<AuditEvent, 'hash'>): string {
  return hash('sha256', chainedText(event));
}

function rowOf(event: AuditEvent): Insertable<AuditEventTable> {
  return {
    sequence: event.sequence,
    occurred_at: event.occurredAt,
    team_id: event.teamId,
    account_id: event.accountId,
    role: event.role,
    action: event.action,
    patient_id: event.patientId,
    referral_id: event.referralId,
    subject_id: event.subjectId,
    details: event.details,
    details_salt: event.detailsSalt,
    previous_hash: event.previousHash,
    hash: event.hash,
  };
}

/** An entry as the domain has it. */
export function eventFromRow(row: Selectable<AuditEventTable>): AuditEvent {
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
    detailsSalt: row.details_salt,
    previousHash: row.previous_hash,
    hash: row.hash,
  };
}
