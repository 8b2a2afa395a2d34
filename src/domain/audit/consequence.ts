import type { AuditAction } from './audit-event.js';

/** What an event changes of the record: nothing of anybody's course, the course of the person it names, or more. */
export type Consequence = 'none' | 'person' | 'team';

const NOTHING: readonly AuditAction[] = [
  'patient-read',
  'patients-listed',
  'patients-searched',
  'merges-read',
  'referral-read',
  'referrals-listed',
  'assessment-sheet-read',
  'assessments-read',
  'assessment-read',
  'history-read',
  'draft-read',
  'draft-saved',
  'draft-discarded',
  'cautions-read',
  'outcomes-read',
  'letter-read',
  'course-exported',
  'sessions-listed',
  'session-read',
  'register-written',
  'diary-read',
  'report-read',
  'report-exported',
  'figure-opened',
  'figures-of-referral-read',
  'import-begun',
  'import-read',
  'imports-listed',
  'import-mapped',
  'import-discarded',
  'record-exported',
  'analysis-exported',
  'releases-listed',
  'release-previewed',
  'release-refused',
  'release-made',
  'release-read',
  'release-withdrawn',
  'work-list-read',
  'audit-trail-read',
  'retention-read',
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
  'accounts-listed',
  'account-read',
  'token-created',
  'token-revoked',
  'tokens-listed',
];

const OF_ONE_PERSON: readonly AuditAction[] = [
  'patient-registered',
  'patient-corrected',
  'referral-registered',
  'referral-corrected',
  'referral-triaged',
  'triage-corrected',
  'offer-recorded',
  'offer-corrected',
  'referral-closed',
  'closure-corrected',
  'referral-reopened',
  'assessment-recorded',
  'assessment-corrected',
  'caution-acknowledged',
  'diary-week-recorded',
  'sessions-counted',
];

const CONSEQUENCES: ReadonlyMap<string, Consequence> = new Map([
  ...NOTHING.map((action) => [action, 'none'] as const),
  ...OF_ONE_PERSON.map((action) => [action, 'person'] as const),
]);

/**
 * What an event may have changed for whoever judged something by the record before it.
 *
 * @param action an event's; one that is not known here counts as having changed anything
 */
export function consequenceOf(action: string): Consequence {
  return CONSEQUENCES.get(action) ?? 'team';
}
