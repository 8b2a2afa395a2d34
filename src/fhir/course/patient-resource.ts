import type { Patient } from '../../domain/patient/patient.js';
import { ETHNIC_WORDS } from '../../domain/patient/words.js';
import { extensionsOf, listed } from '../elements.js';
import type { Element, Resource } from '../elements.js';
import { PATIENT_EXTENSIONS } from '../extensions.js';
import { FHIR_GENDERS } from '../genders.js';
import { ETHNIC_EXTENSION, ETHNIC_SYSTEM, NHS_NUMBER_SYSTEM, PRACTICE_SYSTEM } from '../vocabulary.js';
import type { CourseToSend } from './course-to-send.js';

/** The person. @source FHIR R4 (4.0.1), Patient. */
export function patientResource({ patient, referral, teamName }: CourseToSend): Resource {
  const { nhsNumber, familyName, givenName, gpPracticeCode } = patient;
  return {
    resourceType: 'Patient',
    id: patient.id,
    extension: [ethnicCategory(patient), ...extensionsOf(PATIENT_EXTENSIONS, patient)],
    identifier: listed(nhsNumber === null ? [] : [{ system: NHS_NUMBER_SYSTEM, value: nhsNumber }]),
    name: [{ use: 'official', family: familyName, given: [givenName] }],
    gender: FHIR_GENDERS[patient.gender],
    birthDate: patient.bornOn,
    deceasedBoolean: referral.closure?.reason === 'died' ? true : undefined,
    generalPractitioner: listed(
      gpPracticeCode === null
        ? []
        : [{ type: 'Organization', identifier: { system: PRACTICE_SYSTEM, value: gpPracticeCode } }],
    ),
    managingOrganization: { display: teamName },
  };
}

function ethnicCategory({ ethnicCategory: code }: Patient): Element {
  const display = ETHNIC_WORDS[code];
  return {
    url: ETHNIC_EXTENSION,
    valueCodeableConcept: { coding: [{ system: ETHNIC_SYSTEM, code }], text: display },
  };
}
