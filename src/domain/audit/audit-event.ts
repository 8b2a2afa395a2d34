import type { AuditAction } from './audit-action.js';

/** A value before and after a change; null before where there was none. */
export type ChangedValue = readonly [before: unknown, after: unknown];

/** What is told of an event: ids and values, never a secret, and no free text that the record itself holds. */
export interface AuditDetails {
  readonly changes?: Readonly<Record<string, ChangedValue>>;
  readonly reason?: string;
  readonly [detail: string]: unknown;
}

/** An event before it is chained. */
export interface NewAuditEvent {
  readonly action: AuditAction;
  /** The team whose trail is told, where it is not the actor's own: a commissioner reads what a team has released. */
  readonly teamId?: string;
  readonly patientId?: string;
  readonly referralId?: string;
  readonly subjectId?: string;
  readonly details?: AuditDetails;
}

/** An event as it stands in the trail. */
export interface AuditEvent {
  readonly sequence: number;
  /** UTC. */
  readonly occurredAt: string;
  readonly teamId: string | null;
  readonly accountId: string | null;
  readonly role: string | null;
  readonly action: string;
  readonly patientId: string | null;
  readonly referralId: string | null;
  readonly subjectId: string | null;
  readonly details: string;
  /** Random text hashed with the details, so that removed ones cannot be found out by trying. */
  readonly detailsSalt: string | null;
  readonly previousHash: string;
  readonly hash: string;
}

/** What stands in the place of details that were removed with the record that they repeat. */
export const REMOVED_DETAILS = '{"removed":"retention"}';

/** The hash that the first entry is chained to. */
export const FIRST_PREVIOUS_HASH = '0'.repeat(64);

/**
 * The text of an event that is hashed: every field in a fixed order, so that any change to any of them breaks the chain.
 *
 * @example the text of two events that differ in one character of one field differs
 */
export function chainedText(event: Omit<AuditEvent, 'hash'>): string {
  return JSON.stringify([
    event.previousHash,
    event.sequence,
    event.occurredAt,
    event.teamId,
    event.accountId,
    event.role,
    event.action,
    event.patientId,
    event.referralId,
    event.subjectId,
    event.details,
    ...(event.detailsSalt === null ? [] : [event.detailsSalt]),
  ]);
}
