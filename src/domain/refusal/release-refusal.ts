import type { AttackReport } from '../release/protect-release.js';

/** What is refused of releases. */
export type ReleaseRefusal =
  /** The attack found something out, or came to no end. */
  | { readonly code: 'release-refused'; readonly attack: AttackReport }
  /** There is one of the same period that stands. */
  | { readonly code: 'release-exists'; readonly existingNumber: number }
  /** It was withdrawn, or corrected by another. */
  | { readonly code: 'release-closed'; readonly why: 'withdrawn' | 'corrected' };
