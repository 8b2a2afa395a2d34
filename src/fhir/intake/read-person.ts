import {
  ETHNIC_CATEGORIES,
  GENDERS,
  NHS_NUMBER_MISSING_REASONS,
  SMOKING_STATUSES,
  YES_NO_NOT_KNOWN,
} from '../../domain/patient/patient.js';
import type { EthnicCategory, Gender, PatientDetails } from '../../domain/patient/patient.js';
import { ETHNIC_WORDS } from '../../domain/patient/words.js';
import { SEXES_AT_BIRTH } from '../../domain/referral/closed-sets.js';
import { PATIENT_EXTENSIONS } from '../extensions.js';
import { FHIR_GENDERS } from '../genders.js';
import { ETHNIC_EXTENSION, ETHNIC_SYSTEM } from '../vocabulary.js';
import { memberAt, needed, notTaken } from './fields.js';
import type { Gathered } from './fields.js';
import { openExtensions } from './open-extensions.js';
import { readName, readNhsNumber, readPractice } from './read-identity.js';
import type { OpenElement } from './reading.js';

/**
 * The person of a Patient resource. It asks for what registering a person asks for; what may be left out there may be left
 * out here, and is not known.
 *
 * @returns null, with faults, where something is missing or cannot be taken
 */
export function readPerson(patient: OpenElement, gathered: Gathered): PatientDetails | null {
  const extensions = openExtensions(patient, PATIENT_EXTENSIONS, { part: '/patient', gathered });
  refuseOthers(patient, gathered);
  const { familyName, givenName } = readName(patient, gathered);
  const sexAtBirth = extensions.neededCode('sexAtBirth', SEXES_AT_BIRTH);
  const details = {
    nhsNumber: readNhsNumber(patient, gathered),
    nhsNumberMissingReason: extensions.code('nhsNumberMissingReason', NHS_NUMBER_MISSING_REASONS),
    gender: readGender(patient, extensions.code('gender', GENDERS), gathered),
    ethnicCategory: readEthnicCategory(extensions.other(ETHNIC_EXTENSION), gathered),
    deprivationQuintile: extensions.whole('deprivationQuintile', { min: 1, max: 5 }),
    deprivationIndexYear: extensions.whole('deprivationIndexYear', { min: 2000, max: 2100 }),
    smokingStatus: extensions.code('smokingStatus', SMOKING_STATUSES) ?? 'not-known',
    interpreterNeed: extensions.code('interpreterNeed', YES_NO_NOT_KNOWN) ?? 'not-known',
    livesAlone: extensions.code('livesAlone', YES_NO_NOT_KNOWN) ?? 'not-known',
    homeOxygen: extensions.code('homeOxygen', YES_NO_NOT_KNOWN) ?? 'not-known',
    gpPracticeCode: readPractice(patient, gathered),
  } as const;
  extensions.leaveRest();
  gathered.places.set('/patient/bornOn', patient.at('birthDate'));
  const bornOn = patient.date('birthDate');
  if (!patient.has('birthDate')) needed(gathered, patient.at('birthDate'), 'Give the date of birth.');
  if (familyName === null || givenName === null || bornOn === null || sexAtBirth === null) return null;
  return { ...details, familyName, givenName, bornOn, sexAtBirth };
}

/** Elements that would make it another matter than registering a person. @source FHIR R4 (4.0.1), Patient: modifiers */
function refuseOthers(patient: OpenElement, gathered: Gathered): void {
  if (patient.flag('active') === false) {
    notTaken(gathered, patient.at('active'), 'The record of this person is not in use where it comes from.');
  }
  if (patient.flag('deceasedBoolean') === true || patient.has('deceasedDateTime')) {
    const name = patient.has('deceasedDateTime') ? 'deceasedDateTime' : 'deceasedBoolean';
    patient.label(name);
    notTaken(gathered, patient.at(name), 'A person who has died cannot be referred.');
  }
  if (patient.has('link')) {
    patient.label('link');
    notTaken(gathered, patient.at('link'), 'This record is linked to another: send the one that is in use.');
  }
}

/** The extension tells more than the element; the two must not contradict each other. */
function readGender(patient: OpenElement, exact: Gender | null, gathered: Gathered): Gender {
  const administrative = patient.text('gender');
  if (administrative === null) return exact ?? 'not-known';
  const pointer = patient.at('gender');
  const known = memberAt(gathered, ['female', 'male', 'other', 'unknown'], {
    value: administrative,
    pointer,
  });
  if (known === null) return 'not-known';
  if (exact === null) return known === 'unknown' ? 'not-known' : known;
  if (FHIR_GENDERS[exact] !== known) {
    notTaken(gathered, pointer, 'This contradicts the extension that tells the gender.');
  }
  return exact;
}

function readEthnicCategory(extension: OpenElement | null, gathered: Gathered): EthnicCategory {
  const concept = extension?.part('valueCodeableConcept') ?? null;
  if (concept === null) return '99';
  let category: EthnicCategory | null = null;
  for (const coding of concept.parts('coding')) {
    const value = coding.text('code');
    if (coding.text('system') !== ETHNIC_SYSTEM || value === null || category !== null) {
      coding.leave();
    } else {
      coding.label('display');
      category = memberAt(gathered, ETHNIC_CATEGORIES, { value, pointer: coding.at('code') });
    }
  }
  if (category !== null) concept.sameAs('text', [ETHNIC_WORDS[category]]);
  return category ?? '99';
}
