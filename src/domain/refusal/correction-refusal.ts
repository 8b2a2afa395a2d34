import type { Meanwhile } from '../history/history.js';

/** Why a correction may be refused, by a stable code. */
export type CorrectionRefusal =
  | { readonly code: 'precondition-required' }
  | { readonly code: 'bad-precondition' }
  | { readonly code: 'changed-meanwhile'; readonly meanwhile: Meanwhile };
