import type { PlainDate } from '../calendar/plain-date.js';
import type { Draft } from '../draft/draft.js';
import type { ReleaseRefusal } from './release-refusal.js';
import type { CorrectionRefusal } from './correction-refusal.js';
import type { ImportRefusal } from './import-refusal.js';

/** One thing that is wrong with what was sent, and where. */
export interface Fault {
  /** JSON Pointer to the field, such as `/walkTests/0/distanceM`. */
  readonly pointer: string;
  /** Stable code, such as `off-the-grid`. */
  readonly code: string;
  /** What is wrong and what would be right, in words; no patient detail. */
  readonly message: string;
}

/** Everything a use case may refuse, by a stable code. */
export type Refusal =
  | CorrectionRefusal
  | ImportRefusal
  | { readonly code: 'not-found'; readonly what: RecordKind }
  | { readonly code: 'rules-broken'; readonly faults: readonly Fault[] }
  | { readonly code: 'please-check'; readonly faults: readonly Fault[] }
  | { readonly code: 'patient-already-registered'; readonly existingId: string }
  | { readonly code: 'referral-already-open'; readonly existingId: string }
  | { readonly code: 'assessment-already-recorded'; readonly existingId: string }
  | { readonly code: 'already-triaged' }
  | { readonly code: 'not-triaged' }
  | { readonly code: 'already-closed' }
  | { readonly code: 'not-closed' }
  | { readonly code: 'already-acknowledged' }
  | { readonly code: 'sign-in-refused' }
  | { readonly code: 'no-role-here' }
  | { readonly code: 'sign-in-delayed'; readonly retryAfterSeconds: number }
  | { readonly code: 'session-over' }
  | { readonly code: 'invitation-not-valid' }
  | { readonly code: 'sign-in-name-taken' }
  | { readonly code: 'second-factor-present' }
  | { readonly code: 'last-lead' }
  | { readonly code: 'own-account' }
  | ({ readonly code: 'stale-draft' } & Pick<Draft, 'version' | 'state' | 'saved'>)
  | ReleaseRefusal
  | { readonly code: 'no-letter'; readonly why: 'died' | 'registered-in-error' }
  | { readonly code: 'still-kept'; readonly keptUntil: PlainDate | null }
  | { readonly code: 'bad-cursor' }
  | { readonly code: 'key-used-otherwise' }
  | { readonly code: 'answer-not-kept'; readonly existingId: string | null };

export type RecordKind =
  | 'patient'
  | 'merge'
  | 'referral'
  | 'offer'
  | 'assessment'
  | 'session'
  | 'measure'
  | 'equation'
  | 'indicator'
  | 'figure'
  | 'site'
  | 'commissioner'
  | 'page'
  | 'account'
  | 'token'
  | 'import'
  | 'release';

/** What a use case gives back: a value, or a refusal with nothing written. */
export type Outcome<Value> =
  { readonly kind: 'done'; readonly value: Value } | { readonly kind: 'refused'; readonly refusal: Refusal };

/** A successful outcome. */
export function done<Value>(value: Value): Outcome<Value> {
  return { kind: 'done', value };
}

/** A refused outcome. */
export function refused(refusal: Refusal): { readonly kind: 'refused'; readonly refusal: Refusal } {
  return { kind: 'refused', refusal };
}
