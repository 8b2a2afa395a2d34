import { britishDate } from '../../domain/calendar/british-date.js';
import { ageInYears } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Patient } from '../../domain/patient/patient.js';
import { NHS_NUMBER_MISSING_WORDS } from '../../domain/patient/words.js';

/** Date of birth with the age in years. @example '9 March 1954, 72 years' */
export function bornWords(bornOn: PlainDate, today: PlainDate): string {
  return `${britishDate(bornOn)}, ${ageInYears(bornOn, today)} years`;
}

/** The NHS number as people read it, or why there is none. */
export function nhsNumberWords({ nhsNumber, nhsNumberMissingReason }: Patient): string {
  if (nhsNumber !== null) return `${nhsNumber.slice(0, 3)} ${nhsNumber.slice(3, 6)} ${nhsNumber.slice(6)}`;
  return nhsNumberMissingReason === null
    ? 'no NHS number'
    : `no NHS number: ${NHS_NUMBER_MISSING_WORDS[nhsNumberMissingReason]}`;
}
