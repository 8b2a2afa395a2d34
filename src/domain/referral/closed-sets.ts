/** Closed sets of the record: every value that a field may take, in the order in which lists show them. */

export const DIAGNOSES = [
  'copd',
  'asthma',
  'bronchiectasis',
  'idiopathic-pulmonary-fibrosis',
  'other-interstitial-lung-disease',
  'pulmonary-hypertension',
  'lung-cancer',
  'other-respiratory',
  'not-known',
] as const;
export type Diagnosis = (typeof DIAGNOSES)[number];

export const REFERRAL_SOURCES = [
  'general-practice',
  'hospital-ward',
  'early-supported-discharge',
  'respiratory-clinic',
  'community-respiratory-team',
  'self-referral',
  'other',
  'not-known',
] as const;
export type ReferralSource = (typeof REFERRAL_SOURCES)[number];

export const PATHWAYS = ['stable', 'after-exacerbation'] as const;
export type Pathway = (typeof PATHWAYS)[number];

export const DELIVERY_MODES = ['centre', 'home', 'remote', 'hybrid'] as const;
export type DeliveryMode = (typeof DELIVERY_MODES)[number];

export const TRIAGE_DECISIONS = ['accepted', 'not-suitable', 'redirected'] as const;
export type TriageDecision = (typeof TRIAGE_DECISIONS)[number];

export const OFFER_KINDS = ['assessment', 'programme'] as const;
export type OfferKind = (typeof OFFER_KINDS)[number];

export const OFFER_RESPONSES = ['accepted', 'declined', 'no-reply', 'awaiting-reply'] as const;
export type OfferResponse = (typeof OFFER_RESPONSES)[number];

export const CLOSURE_REASONS = [
  'completed',
  'declined',
  'no-reply',
  'not-suitable',
  'chose-to-stop',
  'exacerbation',
  'other-illness',
  'hospital-admission',
  'transport',
  'work-or-caring',
  'moved-away',
  'transferred',
  'died',
  'registered-in-error',
  'other',
] as const;
export type ClosureReason = (typeof CLOSURE_REASONS)[number];

export const TIMEPOINTS = ['baseline', 'discharge', 'follow-up'] as const;
export type Timepoint = (typeof TIMEPOINTS)[number];

export const ATTENDANCE_OUTCOMES = [
  'attended',
  'did-not-attend',
  'cancelled-by-patient',
  'cancelled-by-service',
] as const;
export type AttendanceOutcome = (typeof ATTENDANCE_OUTCOMES)[number];

export const SESSION_MODES = ['centre', 'home', 'remote'] as const;
export type SessionMode = (typeof SESSION_MODES)[number];

export const SEXES_AT_BIRTH = ['female', 'male', 'indeterminate', 'not-known'] as const;
export type SexAtBirth = (typeof SEXES_AT_BIRTH)[number];

/** Where a test was done: on a measured course, or at the person's home. */
export const TEST_PLACES = ['course', 'home'] as const;
export type TestPlace = (typeof TEST_PLACES)[number];

export const WALKING_AIDS = [
  'none',
  'stick',
  'two-sticks',
  'crutches',
  'frame',
  'rollator',
  'other',
] as const;
export type WalkingAid = (typeof WALKING_AIDS)[number];

/** Why a test or questionnaire has no value. */
export const NOT_DONE_REASONS = [
  'declined',
  'not-safe',
  'unable',
  'no-time',
  'no-equipment',
  'not-offered',
  'language',
  'other',
] as const;
export type NotDoneReason = (typeof NOT_DONE_REASONS)[number];

/** Why a walk ended. */
export const STOP_REASONS = [
  'end-of-test',
  'breathlessness',
  'leg-fatigue',
  'could-not-keep-pace',
  'low-oxygen-saturation',
  'chest-pain',
  'dizziness',
  'pain',
  'operator-safety',
  'other',
] as const;
export type StopReason = (typeof STOP_REASONS)[number];

export const SAFETY_SCREENS = ['no-concern', 'concern', 'not-recorded'] as const;
export type SafetyScreen = (typeof SAFETY_SCREENS)[number];
