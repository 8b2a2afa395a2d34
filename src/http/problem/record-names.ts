import type { RecordKind } from '../../domain/refusal/refusal.js';

/** What a kind of record is called where it is refused. */
export const RECORD_NAMES: Readonly<Record<RecordKind, string>> = {
  patient: 'patient',
  merge: 'merge of this record',
  referral: 'referral',
  offer: 'offer',
  assessment: 'assessment',
  session: 'session',
  measure: 'measure',
  equation: 'prediction equation',
  indicator: 'indicator',
  figure: 'figure',
  site: 'site',
  commissioner: 'commissioner',
  page: 'page',
  account: 'account',
  import: 'import',
  token: 'token',
  release: 'release',
};
