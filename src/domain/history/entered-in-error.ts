/** Marks an entry that should not have been made: it stays readable and counts in no figure. */
export interface EnteredInError {
  /** UTC. */
  readonly markedAt: string;
  /** Id of the account. */
  readonly markedBy: string;
  readonly reason: string;
}

/** Which entries a list shows: those that stand, those entered in error, or both. */
export const ENTRY_FILTERS = ['standing', 'in-error', 'all'] as const;
export type EntryFilter = (typeof ENTRY_FILTERS)[number];

/** Numbers of entries in error, by what they are. */
export interface EntriesInError {
  readonly referrals: number;
  readonly offers: number;
  readonly sessions: number;
  readonly assessments: number;
}

const NAMES: Readonly<Record<keyof EntriesInError, readonly [one: string, more: string]>> = {
  referrals: ['referral', 'referrals'],
  offers: ['offer', 'offers'],
  sessions: ['session', 'sessions'],
  assessments: ['assessment', 'assessments'],
};

/**
 * What was kept out of a report, in words.
 *
 * @example entriesInErrorWords({ referrals: 1, offers: 0, sessions: 2, assessments: 0 }) -> '3 entries in error kept out: 1 referral, 2 sessions'
 */
export function entriesInErrorWords(counts: EntriesInError): string {
  const kinds = ['referrals', 'offers', 'sessions', 'assessments'] as const;
  const total = kinds.reduce((sum, kind) => sum + counts[kind], 0);
  if (total === 0) return 'No entries in error to keep out';
  const parts = kinds
    .filter((kind) => counts[kind] > 0)
    .map((kind) => `${counts[kind]} ${NAMES[kind][counts[kind] === 1 ? 0 : 1]}`);
  return `${total} ${total === 1 ? 'entry' : 'entries'} in error kept out: ${parts.join(', ')}`;
}
