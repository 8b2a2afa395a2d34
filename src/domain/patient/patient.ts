import type { PlainDate } from '../calendar/plain-date.js';
import { ageInYears } from '../calendar/plain-date.js';
import { checkNhsNumber } from '../identity/nhs-number.js';
import type { NhsNumberFault, NhsNumberRange } from '../identity/nhs-number.js';
import type { SexAtBirth } from '../referral/closed-sets.js';
import type { Fault } from '../refusal/refusal.js';

export const GENDERS = ['female', 'male', 'non-binary', 'other', 'not-stated', 'not-known'] as const;
export const SMOKING_STATUSES = ['current', 'former', 'never', 'not-stated', 'not-known'] as const;
export const YES_NO_NOT_KNOWN = ['yes', 'no', 'not-known'] as const;
export const NHS_NUMBER_MISSING_REASONS = [
  'not-yet-traced',
  'no-nhs-number',
  'declined',
  'overseas-visitor',
] as const;
/** NHS Data Dictionary, ETHNIC CATEGORY (2001): 16 categories, Z not stated (asked, declined), 99 not known (not asked). */
export const ETHNIC_CATEGORIES = [
  'A',
  'B',
  'C',
  'D',
  'E',
  'F',
  'G',
  'H',
  'J',
  'K',
  'L',
  'M',
  'N',
  'P',
  'R',
  'S',
  'Z',
  '99',
] as const;

export type Gender = (typeof GENDERS)[number];
export type SmokingStatus = (typeof SMOKING_STATUSES)[number];
export type YesNoNotKnown = (typeof YES_NO_NOT_KNOWN)[number];
export type NhsNumberMissingReason = (typeof NHS_NUMBER_MISSING_REASONS)[number];
export type EthnicCategory = (typeof ETHNIC_CATEGORIES)[number];

/** What the record holds about a person. */
export interface PatientDetails {
  /** Ten digits; null with a reason. */
  readonly nhsNumber: string | null;
  readonly nhsNumberMissingReason: NhsNumberMissingReason | null;
  readonly familyName: string;
  readonly givenName: string;
  readonly bornOn: PlainDate;
  readonly sexAtBirth: SexAtBirth;
  readonly gender: Gender;
  readonly ethnicCategory: EthnicCategory;
  /** 1 most deprived to 5 least deprived fifth; null where not known. */
  readonly deprivationQuintile: number | null;
  /** Edition of the index the fifth comes from; editions are not mixed in one trend. */
  readonly deprivationIndexYear: number | null;
  readonly smokingStatus: SmokingStatus;
  readonly interpreterNeed: YesNoNotKnown;
  readonly livesAlone: YesNoNotKnown;
  readonly homeOxygen: YesNoNotKnown;
  readonly gpPracticeCode: string | null;
}

export interface Patient extends PatientDetails {
  readonly id: string;
  readonly version: number;
  /** Id of the record in which this person is kept; null unless this one is a duplicate that was merged. */
  readonly mergedInto: string | null;
}

/** What says who somebody is: it stands in the record and its history, and is repeated nowhere. */
export const IDENTIFYING_FIELDS = [
  'nhsNumber',
  'familyName',
  'givenName',
  'bornOn',
  'gpPracticeCode',
] as const;

const OLDEST_YEARS = 120;

/**
 * Checks what was typed about a person, and brings the NHS number to ten digits.
 *
 * @param details as typed
 * @param context whether the team is live or a demo team, and today's date
 * @returns every fault found, and the details as they are to be stored when there is none
 */
export function checkPatient(
  details: PatientDetails,
  context: { readonly range: NhsNumberRange; readonly today: PlainDate },
): { readonly faults: readonly Fault[]; readonly details: PatientDetails } {
  const faults: Fault[] = [];
  let nhsNumber = details.nhsNumber;
  if (nhsNumber !== null) {
    const checked = checkNhsNumber(nhsNumber, context.range);
    if (checked.kind === 'invalid') {
      faults.push({
        pointer: '/nhsNumber',
        code: checked.fault,
        message: NHS_NUMBER_MESSAGES[checked.fault],
      });
    } else {
      nhsNumber = checked.nhsNumber;
    }
  }
  if ((details.nhsNumber === null) === (details.nhsNumberMissingReason === null)) {
    faults.push({
      pointer: '/nhsNumberMissingReason',
      code: 'nhs-number-or-reason',
      message: 'Give either the NHS number or the reason why there is none.',
    });
  }
  if (details.bornOn > context.today) {
    faults.push({
      pointer: '/bornOn',
      code: 'in-the-future',
      message: 'The date of birth cannot be in the future.',
    });
  } else if (ageInYears(details.bornOn, context.today) > OLDEST_YEARS) {
    faults.push({
      pointer: '/bornOn',
      code: 'out-of-range',
      message: `The date of birth makes the person older than ${OLDEST_YEARS} years. Check the year.`,
    });
  }
  if ((details.deprivationQuintile === null) !== (details.deprivationIndexYear === null)) {
    faults.push({
      pointer: '/deprivationIndexYear',
      code: 'quintile-with-year',
      message: 'Give the deprivation fifth together with the year of the index it comes from.',
    });
  }
  return { faults, details: { ...details, nhsNumber } };
}

/**
 * A fault when a person would be born after their first referral was received.
 *
 * @param firstReceivedOn null where the person has no referral
 */
export function bornBeforeReceipt(bornOn: PlainDate, firstReceivedOn: PlainDate | null): readonly Fault[] {
  if (firstReceivedOn === null || bornOn <= firstReceivedOn) return [];
  const message = 'The date of birth cannot be after a referral of the person was received.';
  return [{ pointer: '/bornOn', code: 'after-receipt', message }];
}

const NHS_NUMBER_MESSAGES: Readonly<Record<NhsNumberFault, string>> = {
  'not-ten-digits': 'An NHS number has ten digits.',
  'repeated-digit': 'An NHS number does not repeat one digit ten times.',
  'wrong-check-digit': 'The last digit does not agree with the others. Check each digit.',
  'test-range': 'Numbers that start with 999 are for tests and demonstrations only.',
  'outside-test-range': 'A demonstration team may hold numbers that start with 999 only.',
};
