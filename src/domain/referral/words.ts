import type {
  ClosureReason,
  DeliveryMode,
  Diagnosis,
  Pathway,
  ReferralSource,
  SexAtBirth,
} from './closed-sets.js';

/** The closed sets in words, as readers see them. */

export const DIAGNOSIS_WORDS: Readonly<Record<Diagnosis, string>> = {
  copd: 'COPD',
  asthma: 'asthma',
  bronchiectasis: 'bronchiectasis',
  'idiopathic-pulmonary-fibrosis': 'idiopathic pulmonary fibrosis',
  'other-interstitial-lung-disease': 'other interstitial lung disease',
  'pulmonary-hypertension': 'pulmonary hypertension',
  'lung-cancer': 'lung cancer',
  'other-respiratory': 'other respiratory disease',
  'not-known': 'diagnosis not known',
};

export const SOURCE_WORDS: Readonly<Record<ReferralSource, string>> = {
  'general-practice': 'general practice',
  'hospital-ward': 'hospital ward',
  'early-supported-discharge': 'early supported discharge',
  'respiratory-clinic': 'respiratory clinic',
  'community-respiratory-team': 'community respiratory team',
  'self-referral': 'self-referral',
  other: 'other source',
  'not-known': 'source not known',
};

export const PATHWAY_WORDS: Readonly<Record<Pathway, string>> = {
  stable: 'stable disease',
  'after-exacerbation': 'after an exacerbation',
};

export const MODE_WORDS: Readonly<Record<DeliveryMode, string>> = {
  centre: 'at a centre',
  home: 'at home',
  remote: 'by video or telephone',
  hybrid: 'partly at a centre',
};

export const SEX_WORDS: Readonly<Record<SexAtBirth, string>> = {
  female: 'female',
  male: 'male',
  indeterminate: 'indeterminate',
  'not-known': 'not known',
};

export const CLOSURE_WORDS: Readonly<Record<ClosureReason, string>> = {
  completed: 'programme finished',
  declined: 'declined',
  'no-reply': 'no reply',
  'not-suitable': 'not suitable',
  'chose-to-stop': 'chose to stop',
  exacerbation: 'exacerbation',
  'other-illness': 'other illness',
  'hospital-admission': 'hospital admission',
  transport: 'transport',
  'work-or-caring': 'work or caring',
  'moved-away': 'moved away',
  transferred: 'transferred',
  died: 'died',
  'registered-in-error': 'registered in error',
  other: 'other reason',
};

/** Why the state before a triage decision was kept: the step, not a reason that somebody typed. */
export const TRIAGE_STEP = 'Triage';
