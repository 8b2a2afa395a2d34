import type { PageId } from '../../auth/access.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Context, TeamMember } from '../../usecases/context.js';
import type { MarkRequest } from '../../usecases/corrections/mark.js';
import type { NamedMark } from '../../usecases/corrections/named-mark.js';
import type { RecordWords } from '../components/value-words.js';
import type { Named } from '../people/names.js';

/** An entry that may be marked as made in error, as the page shows it. */
export interface MarkableEntry {
  /** What it is, with its day, such as `baseline assessment of 20 April 2026`. */
  readonly words: string;
  readonly version: number;
  readonly mark: NamedMark | null;
  /** Whose it is; null for a class, which is of several people. */
  readonly person: Named | null;
  readonly facts: readonly { readonly term: string; readonly value: string }[];
  /** The page on which the entry is seen. */
  readonly seenAt: string;
}

/** What the address of an entry holds: its id, and of an offer that of its referral too. */
export interface MarkingParams {
  readonly id: string;
  readonly referralId: string;
}

/** A kind of entry: where its pages are, who opens them, and what marks and restores it. */
export interface Marking {
  readonly pageId: PageId;
  /** What stands before the step in the address, with the names of its parts. */
  readonly path: string;
  /** What goes with it, said before it is marked. */
  readonly consequence: string;
  /** How what changed meanwhile is read. */
  readonly fieldWords: RecordWords;
  readonly load: (context: Context, actor: TeamMember, at: MarkingParams) => Promise<Outcome<MarkableEntry>>;
  readonly mark: Change;
  readonly restore: Change;
}

/** Gives the page on which the changed entry is seen. */
type Change = (
  context: Context,
  actor: TeamMember,
  at: MarkingParams,
  request: MarkRequest,
) => Promise<Outcome<string>>;
