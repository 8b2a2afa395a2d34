import type { Meanwhile } from '../history/history.js';
import type { RecordKind } from './refusal.js';

/** Why a correction may be refused, by a stable code. */
export type CorrectionRefusal =
  | { readonly code: 'precondition-required' }
  | { readonly code: 'bad-precondition' }
  | { readonly code: 'entered-in-error'; readonly what: RecordKind }
  | { readonly code: 'not-entered-in-error'; readonly what: RecordKind }
  | { readonly code: 'patient-merged'; readonly existingId: string }
  | { readonly code: 'both-referrals-open'; readonly existingId: string }
  | { readonly code: 'merge-undone' }
  | { readonly code: 'changed-meanwhile'; readonly meanwhile: Meanwhile };
