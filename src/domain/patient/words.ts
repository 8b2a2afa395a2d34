import type {
  EthnicCategory,
  Gender,
  NhsNumberMissingReason,
  SmokingStatus,
  YesNoNotKnown,
} from './patient.js';

/** The closed sets of a person's record in words. Not stated: asked, and did not say. Not known: not asked yet. */

export const GENDER_WORDS: Readonly<Record<Gender, string>> = {
  female: 'female',
  male: 'male',
  'non-binary': 'non-binary',
  other: 'other',
  'not-stated': 'not stated: asked, did not say',
  'not-known': 'not known: not asked yet',
};

export const SMOKING_WORDS: Readonly<Record<SmokingStatus, string>> = {
  current: 'smokes now',
  former: 'smoked in the past',
  never: 'has never smoked',
  'not-stated': 'not stated: asked, did not say',
  'not-known': 'not known: not asked yet',
};

export const YES_NO_WORDS: Readonly<Record<YesNoNotKnown, string>> = {
  yes: 'yes',
  no: 'no',
  'not-known': 'not known: not asked yet',
};

export const NHS_NUMBER_MISSING_WORDS: Readonly<Record<NhsNumberMissingReason, string>> = {
  'not-yet-traced': 'not traced yet',
  'no-nhs-number': 'has none',
  declined: 'does not want to give it',
  'overseas-visitor': 'visitor from overseas',
};

/** NHS Data Dictionary, ETHNIC CATEGORY: the categories of the 2001 census. */
export const ETHNIC_WORDS: Readonly<Record<EthnicCategory, string>> = {
  A: 'White: British',
  B: 'White: Irish',
  C: 'White: any other background',
  D: 'Mixed: White and Black Caribbean',
  E: 'Mixed: White and Black African',
  F: 'Mixed: White and Asian',
  G: 'Mixed: any other background',
  H: 'Asian: Indian',
  J: 'Asian: Pakistani',
  K: 'Asian: Bangladeshi',
  L: 'Asian: any other background',
  M: 'Black: Caribbean',
  N: 'Black: African',
  P: 'Black: any other background',
  R: 'Chinese',
  S: 'any other ethnic group',
  Z: 'not stated: asked, did not say',
  '99': 'not known: not asked yet',
};
