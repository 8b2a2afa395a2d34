import type { PlainDate } from '../calendar/plain-date.js';

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

/** What may be entered in error, in the order in which reports name it. */
export const ENTRY_KINDS = ['referrals', 'offers', 'sessions', 'assessments'] as const;
export type EntryKind = (typeof ENTRY_KINDS)[number];

/** Numbers of entries in error, by what they are. */
export type EntriesInError = Readonly<Record<EntryKind, number>>;

/** One entry that is kept out of every figure, and why. */
export interface EntryInError {
  readonly kind: EntryKind;
  readonly id: string;
  /** Day that the entry is dated: of receipt, of the offer, the class or the assessment. */
  readonly datedOn: PlainDate;
  /** UTC. */
  readonly markedAt: string;
  readonly reason: string;
  /** Null for a class, which is of no one referral. */
  readonly referralId: string | null;
  readonly patientId: string | null;
}

const NAMES: Readonly<Record<EntryKind, readonly [one: string, more: string]>> = {
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
  const total = ENTRY_KINDS.reduce((sum, kind) => sum + counts[kind], 0);
  if (total === 0) return 'No entries in error to keep out';
  const parts = ENTRY_KINDS.filter((kind) => counts[kind] > 0).map(
    (kind) => `${counts[kind]} ${NAMES[kind][counts[kind] === 1 ? 0 : 1]}`,
  );
  return `${total} ${total === 1 ? 'entry' : 'entries'} in error kept out: ${parts.join(', ')}`;
}

/** What an entry is called by itself. @example entryKindWords('offers') -> 'offer' */
export function entryKindWords(kind: EntryKind): string {
  return NAMES[kind][0];
}
