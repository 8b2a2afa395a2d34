import {
  CLOSURE_REASONS,
  DELIVERY_MODES,
  DIAGNOSES,
  PATHWAYS,
  REFERRAL_SOURCES,
  SEXES_AT_BIRTH,
  TIMEPOINTS,
  TRIAGE_DECISIONS,
  WALKING_AIDS,
} from '../referral/closed-sets.js';
import {
  ETHNIC_CATEGORIES,
  GENDERS,
  NHS_NUMBER_MISSING_REASONS,
  SMOKING_STATUSES,
  YES_NO_NOT_KNOWN,
} from '../patient/patient.js';
import type { CodeWords } from './read-code.js';

// Words by which teams write the codes of the record in their sheets: common practice, no source, except where one is named.

function words<Code extends string>(
  codes: readonly Code[],
  known: Readonly<Partial<Record<Code, readonly string[]>>>,
): CodeWords {
  return Object.fromEntries(codes.map((code) => [code, known[code] ?? []]));
}

export const SEX_WORDS = words(SEXES_AT_BIRTH, {
  female: ['f', 'woman'],
  male: ['m', 'man'],
  indeterminate: ['i'],
});
export const GENDER_WORDS = words(GENDERS, {
  female: ['f', 'woman'],
  male: ['m', 'man'],
  'non-binary': ['nonbinary', 'nb'],
  'not-stated': ['prefer not to say', 'declined'],
});
/** Names of the categories: NHS Data Dictionary, ETHNIC CATEGORY (2001). */
export const ETHNIC_WORDS = words(ETHNIC_CATEGORIES, {
  A: ['british', 'white british'],
  B: ['irish', 'white irish'],
  C: ['any other white background', 'white other', 'other white'],
  D: ['white and black caribbean'],
  E: ['white and black african'],
  F: ['white and asian'],
  G: ['any other mixed background'],
  H: ['indian'],
  J: ['pakistani'],
  K: ['bangladeshi'],
  L: ['any other asian background'],
  M: ['caribbean', 'black caribbean'],
  N: ['african', 'black african'],
  P: ['any other black background'],
  R: ['chinese'],
  S: ['any other ethnic group'],
  Z: ['not stated', 'declined', 'prefer not to say'],
  '99': ['not known', 'unknown', 'n k', 'nk', 'not asked'],
});
export const SMOKING_WORDS = words(SMOKING_STATUSES, {
  current: ['smoker', 'current smoker', 'yes', 'y'],
  former: ['ex', 'ex smoker', 'former smoker', 'exsmoker'],
  never: ['never smoked', 'non smoker', 'never smoker', 'no'],
  'not-stated': ['declined'],
});
export const YES_NO_WORDS = words(YES_NO_NOT_KNOWN, {
  yes: ['y', '1', 'true', 'x', '✓'],
  no: ['n', '0', 'false'],
});
export const NO_NUMBER_WORDS = words(NHS_NUMBER_MISSING_REASONS, {
  'not-yet-traced': ['to be traced'],
  declined: ['refused'],
  'overseas-visitor': ['overseas'],
});
export const DIAGNOSIS_CODE_WORDS = words(DIAGNOSES, {
  copd: ['chronic obstructive pulmonary disease', 'emphysema'],
  'idiopathic-pulmonary-fibrosis': ['ipf'],
  'other-interstitial-lung-disease': ['ild', 'interstitial lung disease', 'other ild'],
  'pulmonary-hypertension': ['ph'],
  'lung-cancer': ['cancer of the lung'],
  'other-respiratory': ['other', 'other respiratory disease'],
});
export const SOURCE_CODE_WORDS = words(REFERRAL_SOURCES, {
  'general-practice': ['gp', 'primary care', 'practice nurse', 'gp practice'],
  'hospital-ward': ['ward', 'inpatient', 'hospital'],
  'early-supported-discharge': ['esd', 'supported discharge'],
  'respiratory-clinic': ['clinic', 'outpatients', 'chest clinic', 'secondary care'],
  'community-respiratory-team': ['crt', 'community team', 'community respiratory'],
  'self-referral': ['self', 'patient'],
});
export const PATHWAY_CODE_WORDS = words(PATHWAYS, {
  stable: ['stable disease', 'routine'],
  'after-exacerbation': ['post exacerbation', 'aecopd', 'exacerbation', 'early'],
});
export const MODE_CODE_WORDS = words(DELIVERY_MODES, {
  centre: ['hall', 'class', 'face to face', 'f2f', 'group', 'at a centre'],
  home: ['home based', 'at home'],
  remote: ['video', 'virtual', 'online', 'telephone'],
  hybrid: ['mixed', 'both'],
});
export const TRIAGE_CODE_WORDS = words(TRIAGE_DECISIONS, {
  accepted: ['accept', 'yes', 'y', 'suitable'],
  'not-suitable': ['unsuitable', 'rejected', 'declined by service'],
  redirected: ['redirect', 'referred elsewhere'],
});
export const CLOSURE_CODE_WORDS = words(CLOSURE_REASONS, {
  completed: ['complete', 'finished', 'graduated', 'programme finished'],
  declined: ['refused', 'patient declined'],
  'no-reply': ['no response', 'uncontactable', 'unable to contact'],
  'not-suitable': ['unsuitable'],
  'chose-to-stop': ['dropped out', 'dropout', 'self discharged', 'stopped', 'withdrew'],
  exacerbation: ['flare up'],
  'other-illness': ['ill health', 'illness', 'unwell'],
  'hospital-admission': ['admitted', 'in hospital'],
  'work-or-caring': ['work', 'carer', 'caring'],
  'moved-away': ['moved', 'moved out of area'],
  transferred: ['transfer'],
  died: ['death', 'deceased', 'rip'],
});
export const AID_WORDS = words(WALKING_AIDS, {
  none: ['no', 'n', 'no aid', 'nil'],
  stick: ['one stick', '1 stick', 'walking stick'],
  'two-sticks': ['2 sticks', 'sticks'],
  frame: ['zimmer', 'zimmer frame', 'walking frame'],
  rollator: ['wheeled walker', '4ww', 'three wheeled walker'],
});
export const TIMEPOINT_WORDS = words(TIMEPOINTS, {
  baseline: ['initial', 'start', 'first', 'pre', 'before'],
  discharge: ['final', 'end', 'post', 'after', 'last'],
  'follow-up': ['followup', 'fu', '6 months', '6 month'],
});
