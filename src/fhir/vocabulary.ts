/*
 * Systems and codes of FHIR R4 (4.0.1). A code of a clinical terminology is given only where it was confirmed against a
 * public profile or list; everything else is told in words.
 */

export const NHS_NUMBER_SYSTEM = 'https://fhir.nhs.uk/Id/nhs-number';
export const PRACTICE_SYSTEM = 'https://fhir.nhs.uk/Id/ods-organization-code';
export const ETHNIC_EXTENSION = 'https://fhir.hl7.org.uk/StructureDefinition/Extension-UKCore-EthnicCategory';
export const ETHNIC_SYSTEM = 'https://fhir.hl7.org.uk/CodeSystem/UKCore-EthnicCategoryEngland';
export const UCUM_SYSTEM = 'http://unitsofmeasure.org';
export const LOINC_SYSTEM = 'http://loinc.org';
export const ABSENT_REASON_SYSTEM = 'http://terminology.hl7.org/CodeSystem/data-absent-reason';
export const ACT_CODE_SYSTEM = 'http://terminology.hl7.org/CodeSystem/v3-ActCode';

/** What is asked for: the only kind of request that is sent or taken in. */
export const SERVICE = { code: 'pulmonary-rehabilitation', text: 'Pulmonary rehabilitation' } as const;

/**
 * LOINC codes of measures, by measure id.
 *
 * @source 64098-7: HL7 Denmark, six-minute walk profile; 44261-6 and 70274-6: HL7 Personal Health Records guide
 */
export const MEASURE_LOINC: Readonly<Record<string, string>> = {
  'six-minute-walk-distance': '64098-7',
  'phq-9': '44261-6',
  'gad-7': '70274-6',
};

/**
 * LOINC codes of what is measured beside the tests.
 *
 * @source 59408-5: US Core vital signs; the others: several public code lists that agree
 */
export const FINDING_LOINC = {
  spo2: '59408-5',
  heartRate: '8867-4',
  height: '8302-2',
  weight: '29463-7',
  fev1: '20150-9',
  fev1Fvc: '19926-5',
} as const;

/** An extension of our own, such as `urn:tidemark:extension:received-on`. */
export function extensionUrl(name: string): string {
  return `urn:tidemark:extension:${name}`;
}

/** A closed set of our own, such as `urn:tidemark:code:diagnosis`. */
export function codeSystem(name: string): string {
  return `urn:tidemark:code:${name}`;
}

/** The system of ids of a kind of record, such as `urn:tidemark:site`. */
export function idSystem(kind: string): string {
  return `urn:tidemark:${kind}`;
}
