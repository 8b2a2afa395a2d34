import { britishDate } from '../../domain/calendar/british-date.js';
import { parsePlainDate } from '../../domain/calendar/plain-date.js';
import {
  ETHNIC_WORDS,
  GENDER_WORDS,
  NHS_NUMBER_MISSING_WORDS,
  SMOKING_WORDS,
  YES_NO_WORDS,
} from '../../domain/patient/words.js';
import {
  ATTENDANCE_WORDS,
  OFFER_WORDS,
  RESPONSE_WORDS,
  TRIAGE_WORDS,
} from '../../domain/referral/step-words.js';
import {
  CLOSURE_WORDS,
  DIAGNOSIS_WORDS,
  MODE_WORDS,
  PATHWAY_WORDS,
  SEX_WORDS,
  SOURCE_WORDS,
} from '../../domain/referral/words.js';
import type { HistoryWords } from '../components/history-list.js';
import { fieldWords, valueWords } from '../components/value-words.js';

/** Fields whose own words say less than these. */
const FIELDS: Readonly<Record<string, string>> = {
  nhsNumber: 'NHS number',
  nhsNumberMissingReason: 'Why there is no NHS number',
  bornOn: 'Date of birth',
  deprivationQuintile: 'Deprivation fifth of the home address',
  deprivationIndexYear: 'Year of the deprivation index',
  smokingStatus: 'Smoking',
  interpreterNeed: 'Needs an interpreter',
  homeOxygen: 'Uses oxygen at home',
  gpPracticeCode: 'Code of the general practice',
  mergedInto: 'Kept in another record',
  siteId: 'Site',
  commissionerId: 'Commissioner',
  source: 'Referred by',
  hospitalDischargedOn: 'Left hospital on',
  mrcGrade: 'MRC dyspnoea grade',
  deliveryMode: 'Delivered',
  plannedSessions: 'Planned supervised sessions',
  'enteredInError.reason': 'Entered in error because',
  'offer.kind': 'What was offered',
  'offer.offeredOn': 'Offered on',
  'offer.appointmentOn': 'Offered for the day',
  'offer.response': 'Answer to the offer',
  'offer.respondedOn': 'Answered on',
  'offer.enteredInError.reason': 'Offer entered in error because',
  'closure.closedOn': 'Closed on',
  'closure.reason': 'Reason for closing',
  'closure.note': 'Note on closing',
  closureReason: 'Reason for closing',
};

/** Closed sets by their field; a part of an offer by its name alone. */
const CODES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  nhsNumberMissingReason: NHS_NUMBER_MISSING_WORDS,
  sexAtBirth: SEX_WORDS,
  gender: GENDER_WORDS,
  ethnicCategory: ETHNIC_WORDS,
  smokingStatus: SMOKING_WORDS,
  interpreterNeed: YES_NO_WORDS,
  livesAlone: YES_NO_WORDS,
  homeOxygen: YES_NO_WORDS,
  source: SOURCE_WORDS,
  diagnosis: DIAGNOSIS_WORDS,
  pathway: PATHWAY_WORDS,
  deliveryMode: MODE_WORDS,
  'triage.decision': TRIAGE_WORDS,
  'closure.reason': CLOSURE_WORDS,
  closureReason: CLOSURE_WORDS,
  triageDecision: TRIAGE_WORDS,
  'offer.kind': OFFER_WORDS,
  'offer.response': RESPONSE_WORDS,
};

/** Ids of what is open anyway, and what the line above the table tells: who made the version, and when. */
const UNTOLD = [
  'patientId',
  'offer.id',
  'enteredInError.markedAt',
  'enteredInError.markedBy',
  'offer.enteredInError.markedAt',
  'offer.enteredInError.markedBy',
];
const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Before the id of a referral on the register of a class. */
const OF_REGISTER = 'attendances.';
const ATTENDANCES: Readonly<Record<string, string>> = ATTENDANCE_WORDS;

const NO_NAMES: ReadonlyMap<string, string> = new Map();

/**
 * How the history of a referral and of its person is read: fields and codes in words, dates as people write them.
 *
 * @param names of the sites and commissioners of the team, by id; left out where none of them is at hand
 * @example recordWords().value('diagnosis', 'copd') -> 'COPD'
 */
export function recordWords(names: ReadonlyMap<string, string> = NO_NAMES): HistoryWords {
  return {
    isTold: (field) => !UNTOLD.includes(withoutOfferId(field)),
    field: (field) => {
      const plain = withoutOfferId(field);
      return plain.startsWith(OF_REGISTER) ? 'One person' : (FIELDS[plain] ?? fieldWords(plain));
    },
    value: (field, value) => {
      if (typeof value !== 'string') return valueWords(value);
      if (field === 'nhsNumber') return value.replace(/^(\d{3})(\d{3})(\d{4})$/, '$1 $2 $3');
      const date = parsePlainDate(value);
      if (date !== null) return britishDate(date);
      if (field.startsWith(OF_REGISTER)) return ATTENDANCES[value] ?? value;
      if (ID.test(value)) return names.get(value) ?? 'another record';
      return CODES[withoutOfferId(field)]?.[value] ?? valueWords(value);
    },
  };
}

/** @example withoutOfferId('offers.01a2183c-f333-7460-94ca-962303c36fcd.kind') -> 'offer.kind' */
function withoutOfferId(field: string): string {
  return field.replace(/^offers\.[^.]+\./, 'offer.');
}
