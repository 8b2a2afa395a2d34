import {
  ETHNIC_CATEGORIES,
  GENDERS,
  NHS_NUMBER_MISSING_REASONS,
  SMOKING_STATUSES,
  YES_NO_NOT_KNOWN,
} from '../../domain/patient/patient.js';
import type { PatientDetails } from '../../domain/patient/patient.js';
import {
  DELIVERY_MODES,
  DIAGNOSES,
  PATHWAYS,
  REFERRAL_SOURCES,
  SEXES_AT_BIRTH,
} from '../../domain/referral/closed-sets.js';
import type { ReferralDetails } from '../../domain/referral/referral.js';
import type { EntryReader } from '../forms/entry-reader.js';
import { isTicked, textOf } from '../forms/form-values.js';
import type { FormValues } from '../forms/form-values.js';

/** Ticked where the day of the discharge from hospital is not known yet. */
export const DISCHARGE_NOT_KNOWN = 'hospitalDischargeNotKnown';

const LONGEST_NAME = 100;
const PRACTICE_CODE = /^[A-Z0-9]{3,12}$/;
const YEARS = { min: 2000, max: 2100 };
const FIFTHS = { min: 1, max: 5 };
const GRADES = { min: 1, max: 5 };
const SESSIONS = { min: 1, max: 60 };
const WEEKS = { min: 1, max: 52 };

/** The person of the form; null where something of it is wrong, which the reader has gathered. */
export function readPerson(read: EntryReader, form: FormValues): PatientDetails | null {
  const before = read.errors.length;
  const nhsNumber = textOf(form, 'nhsNumber');
  const nhsNumberMissingReason = read.optionalChoice('nhsNumberMissingReason', NHS_NUMBER_MISSING_REASONS);
  if ((nhsNumber === '') === (nhsNumberMissingReason === null)) {
    const message =
      nhsNumber === ''
        ? 'Give the NHS number, or say why there is none.'
        : 'Give either the NHS number or the reason why there is none, not both.';
    read.errors.push({ field: nhsNumber === '' ? 'nhsNumber' : 'nhsNumberMissingReason', message });
  }
  const familyName = read.line('familyName', LONGEST_NAME, 'Give the family name.');
  const givenName = read.line('givenName', LONGEST_NAME, 'Give the given name.');
  const bornOn = read.date('bornOn', 'Give the date of birth.');
  const sexAtBirth = read.choice('sexAtBirth', SEXES_AT_BIRTH, 'Choose the sex at birth, or not known.');
  const gender = read.choice('gender', GENDERS, 'Choose the gender, or not known.');
  const ethnicCategory = read.choice(
    'ethnicCategory',
    ETHNIC_CATEGORIES,
    'Choose the ethnic category, or not known.',
  );
  const smokingStatus = read.choice(
    'smokingStatus',
    SMOKING_STATUSES,
    'Choose the smoking status, or not known.',
  );
  const interpreterNeed = read.choice('interpreterNeed', YES_NO_NOT_KNOWN, 'Choose yes, no or not known.');
  const livesAlone = read.choice('livesAlone', YES_NO_NOT_KNOWN, 'Choose yes, no or not known.');
  const homeOxygen = read.choice('homeOxygen', YES_NO_NOT_KNOWN, 'Choose yes, no or not known.');
  const deprivationQuintile = read.optionalWhole('deprivationQuintile', FIFTHS);
  const deprivationIndexYear = read.optionalWhole('deprivationIndexYear', YEARS);
  const gpPracticeCode = practiceCode(read, form);
  const isWhole =
    familyName !== null &&
    givenName !== null &&
    bornOn !== null &&
    sexAtBirth !== null &&
    gender !== null &&
    ethnicCategory !== null &&
    smokingStatus !== null &&
    interpreterNeed !== null &&
    livesAlone !== null &&
    homeOxygen !== null;
  if (!isWhole || read.errors.length > before) return null;
  return {
    nhsNumber: nhsNumber === '' ? null : nhsNumber,
    nhsNumberMissingReason,
    familyName,
    givenName,
    bornOn,
    sexAtBirth,
    gender,
    ethnicCategory,
    deprivationQuintile,
    deprivationIndexYear,
    smokingStatus,
    interpreterNeed,
    livesAlone,
    homeOxygen,
    gpPracticeCode,
  };
}

function practiceCode(read: EntryReader, form: FormValues): string | null {
  const typed = textOf(form, 'gpPracticeCode').toUpperCase();
  if (typed === '') return null;
  if (PRACTICE_CODE.test(typed)) return typed;
  const message = `A practice code has 3 to 12 letters and digits, such as Z99001. You entered ${typed.slice(0, 20)}.`;
  read.errors.push({ field: 'gpPracticeCode', message });
  return null;
}

/** The referral of the form; null where something of it is wrong, which the reader has gathered. */
export function readReferral(read: EntryReader, form: FormValues): ReferralDetails | null {
  const before = read.errors.length;
  const receivedOn = read.date('receivedOn', 'Give the day on which the team received the referral.');
  const source = read.choice('source', REFERRAL_SOURCES, 'Choose the source, or source not known.');
  const diagnosis = read.choice('diagnosis', DIAGNOSES, 'Choose the diagnosis, or diagnosis not known.');
  const otherConditions = read.optionalText('otherConditions', 2000);
  const pathway = read.choice('pathway', PATHWAYS, 'Choose the pathway.');
  const hospitalDischargedOn = read.optionalDate('hospitalDischargedOn');
  const isAsked = pathway === 'after-exacerbation' && read.errors.length === before;
  if (isAsked && hospitalDischargedOn === null && !isTicked(form, DISCHARGE_NOT_KNOWN)) {
    const message = 'Give the day of the discharge from hospital, or say that it is not known yet.';
    read.errors.push({ field: 'hospitalDischargedOn', message });
  }
  const mrcGrade = read.optionalWhole('mrcGrade', GRADES);
  const siteId = read.line('siteId', 40, 'Choose the site.');
  const commissionerId = read.optionalText('commissionerId', 40);
  const deliveryMode = read.optionalChoice('deliveryMode', DELIVERY_MODES);
  const plannedSessions = read.optionalWhole('plannedSessions', SESSIONS);
  const plannedWeeks = read.optionalWhole('plannedWeeks', WEEKS);
  const isWhole =
    receivedOn !== null && siteId !== null && source !== null && diagnosis !== null && pathway !== null;
  if (!isWhole || read.errors.length > before) return null;
  return {
    siteId,
    commissionerId,
    receivedOn,
    source,
    diagnosis,
    otherConditions,
    pathway,
    hospitalDischargedOn,
    mrcGrade,
    deliveryMode,
    plannedStartOn: null,
    plannedSessions,
    plannedWeeks,
    exercisePlanGivenOn: null,
  };
}
