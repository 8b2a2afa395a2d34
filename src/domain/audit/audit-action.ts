/**
 * What an event may have changed for whoever judged something by the record before it: nothing of anybody's course, the
 * course of the person it names, those of the referrals whose changes its details tell, or more.
 */
export type Consequence = 'none' | 'person' | 'referrals' | 'team';

/** What happened, in the order of the pathway, and what it changes of the record; ids are stable. */
const ACTIONS = {
  'patient-registered': 'person',
  'patient-read': 'none',
  'patients-listed': 'none',
  'patients-searched': 'none',
  'patient-corrected': 'person',
  'patients-merged': 'team',
  'merge-undone': 'team',
  'merges-read': 'none',
  'referral-registered': 'person',
  'referral-read': 'none',
  'referrals-listed': 'none',
  'referral-corrected': 'person',
  'referral-triaged': 'person',
  'triage-corrected': 'person',
  'offer-recorded': 'person',
  'offer-corrected': 'person',
  'referral-closed': 'person',
  'closure-corrected': 'person',
  'referral-reopened': 'person',
  'assessment-recorded': 'person',
  'assessment-sheet-read': 'none',
  'assessments-read': 'none',
  'assessment-read': 'none',
  'assessment-corrected': 'person',
  'entry-marked-in-error': 'team',
  'entry-restored': 'team',
  'history-read': 'none',
  'draft-read': 'none',
  'draft-saved': 'none',
  'draft-discarded': 'none',
  'cautions-read': 'none',
  'caution-acknowledged': 'person',
  'outcomes-read': 'none',
  'letter-read': 'none',
  'course-exported': 'none',
  'session-registered': 'team',
  'session-corrected': 'team',
  'sessions-listed': 'none',
  'session-read': 'none',
  'register-written': 'referrals',
  'sessions-counted': 'person',
  'diary-week-recorded': 'person',
  'diary-read': 'none',
  'report-read': 'none',
  'report-exported': 'none',
  'figure-opened': 'none',
  'entries-in-error-listed': 'none',
  'figures-of-referral-read': 'none',
  'import-begun': 'none',
  'import-read': 'none',
  'imports-listed': 'none',
  'import-mapped': 'none',
  'import-discarded': 'none',
  'import-done': 'team',
  'import-undone': 'team',
  'import-taken-back': 'team',
  'record-exported': 'none',
  'record-brought-in': 'team',
  'analysis-exported': 'none',
  'releases-listed': 'none',
  'release-previewed': 'none',
  'release-refused': 'none',
  'release-made': 'none',
  'release-read': 'none',
  'release-withdrawn': 'none',
  'settings-changed': 'team',
  'work-list-read': 'none',
  'audit-trail-read': 'none',
  'retention-read': 'none',
  'record-deleted': 'team',
  'access-refused': 'none',
  'answer-repeated': 'none',
  'signed-in': 'none',
  'sign-in-refused': 'none',
  'sign-in-delayed': 'none',
  'second-factor-passed': 'none',
  'second-factor-refused': 'none',
  'signed-out': 'none',
  'signed-out-everywhere': 'none',
  'passphrase-changed': 'none',
  'passphrase-refused': 'none',
  'second-factor-begun': 'none',
  'second-factor-set-up': 'none',
  'second-factor-removed': 'none',
  'account-created': 'team',
  'account-invited': 'team',
  'invitation-renewed': 'team',
  'invitation-accepted': 'team',
  'account-changed': 'team',
  'accounts-listed': 'none',
  'account-read': 'none',
  'token-created': 'none',
  'token-revoked': 'none',
  'tokens-listed': 'none',
} as const satisfies Readonly<Record<string, Consequence>>;

/** What happened. */
export type AuditAction = keyof typeof ACTIONS;

const CONSEQUENCES: ReadonlyMap<string, Consequence> = new Map(Object.entries(ACTIONS));

/**
 * What an event may have changed of the record.
 *
 * @param action an event's; one that is not known here, as a later version may have written it, counts as having changed
 *   anything
 * @example consequenceOf('assessment-corrected') -> 'person'
 */
export function consequenceOf(action: string): Consequence {
  return CONSEQUENCES.get(action) ?? 'team';
}
