import type { PageId } from '../../auth/access.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { Context, TeamMember } from '../../usecases/context.js';
import type { MarkRequest } from '../../usecases/corrections/mark.js';
import type { NamedMark } from '../../usecases/corrections/named-mark.js';
import type { Named } from '../people/names.js';

/** An entry that may be marked as made in error, as the page shows it. */
export interface MarkableEntry {
  /** What it is, with its day, such as `baseline assessment of 20 April 2026`. */
  readonly words: string;
  readonly version: number;
  readonly mark: NamedMark | null;
  readonly person: Named;
  readonly facts: readonly { readonly term: string; readonly value: string }[];
  /** The page on which the entry is seen. */
  readonly seenAt: string;
}

/** A kind of entry: where its pages are, who opens them, and what marks and restores it. */
export interface Marking {
  readonly pageId: PageId;
  /** Before the id in the address. */
  readonly root: string;
  /** What goes with it, said before it is marked. */
  readonly consequence: string;
  readonly load: (context: Context, actor: TeamMember, id: string) => Promise<Outcome<MarkableEntry>>;
  readonly mark: Change;
  readonly restore: Change;
}

/** Gives the page on which the changed entry is seen. */
type Change = (
  context: Context,
  actor: TeamMember,
  id: string,
  request: MarkRequest,
) => Promise<Outcome<string>>;
