/** What happened, in the order of the pathway; ids are stable. */
export const AUDIT_ACTIONS = [
  'patient-registered',
  'patient-read',
  'patients-listed',
  'patients-searched',
  'patient-corrected',
  'patients-merged',
  'merge-undone',
  'merges-read',
  'referral-registered',
  'referral-read',
  'referrals-listed',
  'referral-corrected',
  'referral-triaged',
  'triage-corrected',
  'offer-recorded',
  'offer-corrected',
  'referral-closed',
  'closure-corrected',
  'referral-reopened',
  'assessment-recorded',
  'assessment-sheet-read',
  'assessments-read',
  'assessment-read',
  'assessment-corrected',
  'entry-marked-in-error',
  'entry-restored',
  'history-read',
  'draft-read',
  'draft-saved',
  'draft-discarded',
  'cautions-read',
  'caution-acknowledged',
  'outcomes-read',
  'letter-read',
  'course-exported',
  'session-registered',
  'session-corrected',
  'sessions-listed',
  'session-read',
  'register-written',
  'sessions-counted',
  'diary-week-recorded',
  'diary-read',
  'report-read',
  'report-exported',
  'figure-opened',
  'entries-in-error-listed',
  'figures-of-referral-read',
  'import-begun',
  'import-read',
  'imports-listed',
  'import-mapped',
  'import-discarded',
  'import-done',
  'import-undone',
  'import-taken-back',
  'record-exported',
  'record-brought-in',
  'analysis-exported',
  'releases-listed',
  'release-previewed',
  'release-refused',
  'release-made',
  'release-read',
  'release-withdrawn',
  'settings-changed',
  'work-list-read',
  'audit-trail-read',
  'retention-read',
  'record-deleted',
  'access-refused',
  'answer-repeated',
  'signed-in',
  'sign-in-refused',
  'sign-in-delayed',
  'second-factor-passed',
  'second-factor-refused',
  'signed-out',
  'signed-out-everywhere',
  'passphrase-changed',
  'passphrase-refused',
  'second-factor-begun',
  'second-factor-set-up',
  'second-factor-removed',
  'account-created',
  'account-invited',
  'invitation-renewed',
  'invitation-accepted',
  'account-changed',
  'accounts-listed',
  'account-read',
  'token-created',
  'token-revoked',
  'tokens-listed',
] as const;
export type AuditAction = (typeof AUDIT_ACTIONS)[number];

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
