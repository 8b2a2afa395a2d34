import { hash, randomBytes } from 'node:crypto';
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
  event: Omit<AuditEvent, 'sequence' | 'detailsSalt' | 'previousHash' | 'hash'>,
): Promise<void> {
  const [last] = await lastEvent(db, {});
  const chained = {
    ...event,
    sequence: (last?.sequence ?? 0) + 1,
    detailsSalt: randomBytes(SALT_BYTES).toString('hex'),
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
      details_salt: chained.detailsSalt,
      previous_hash: chained.previousHash,
      hash: hashOf(chained),
    },
  ]);
}

const SALT_BYTES = 16;

const intoAuditEvent = rowsInto('audit_event');

const lastEvent = composedOnce((db) =>
  db.selectFrom('audit_event').select(['sequence', 'hash']).orderBy('sequence', 'desc').limit(1),
);

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

/** The hash of an entry as it stands. */
export function hashOf(event: Omit<AuditEvent, 'hash'>): string {
  return hash('sha256', chainedText(event));
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
