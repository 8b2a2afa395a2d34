import type { Gender } from '../domain/patient/patient.js';

/** FHIR knows four words for the gender; an extension tells the one of the record. @source FHIR R4 (4.0.1), administrative-gender */
export const FHIR_GENDERS: Readonly<Record<Gender, string>> = {
  female: 'female',
  male: 'male',
  'non-binary': 'other',
  other: 'other',
  'not-stated': 'unknown',
  'not-known': 'unknown',
};
