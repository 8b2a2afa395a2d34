import {
  GENDERS,
  NHS_NUMBER_MISSING_REASONS,
  SMOKING_STATUSES,
  YES_NO_NOT_KNOWN,
} from '../domain/patient/patient.js';
import type { PatientDetails } from '../domain/patient/patient.js';
import {
  DELIVERY_MODES,
  PATHWAYS,
  REFERRAL_SOURCES,
  SEXES_AT_BIRTH,
} from '../domain/referral/closed-sets.js';
import type { ReferralDetails } from '../domain/referral/referral.js';

/** What an extension holds: a value of a closed set, a whole number within limits, or a date. */
export type ExtensionValue =
  | { readonly element: 'valueCode'; readonly values: readonly string[] }
  | { readonly element: 'valueInteger'; readonly min: number; readonly max: number }
  | { readonly element: 'valueDate' };

/** A field of the record for which FHIR R4 has no element, and the extension that carries it, out and in. */
export interface ExtensionField<Field extends string> {
  readonly field: Field;
  readonly name: string;
  readonly value: ExtensionValue;
}

function oneOf(values: readonly string[]): ExtensionValue {
  return { element: 'valueCode', values };
}

function whole(min: number, max: number): ExtensionValue {
  return { element: 'valueInteger', min, max };
}

const DATE: ExtensionValue = { element: 'valueDate' };

/** Extensions of a Patient. The gender stands here too, since FHIR has fewer words for it. */
export const PATIENT_EXTENSIONS: readonly ExtensionField<keyof PatientDetails>[] = [
  {
    field: 'nhsNumberMissingReason',
    name: 'nhs-number-missing-reason',
    value: oneOf(NHS_NUMBER_MISSING_REASONS),
  },
  { field: 'sexAtBirth', name: 'sex-at-birth', value: oneOf(SEXES_AT_BIRTH) },
  { field: 'gender', name: 'gender', value: oneOf(GENDERS) },
  { field: 'deprivationQuintile', name: 'deprivation-quintile', value: whole(1, 5) },
  { field: 'deprivationIndexYear', name: 'deprivation-index-year', value: whole(2000, 2100) },
  { field: 'smokingStatus', name: 'smoking-status', value: oneOf(SMOKING_STATUSES) },
  { field: 'interpreterNeed', name: 'interpreter-need', value: oneOf(YES_NO_NOT_KNOWN) },
  { field: 'livesAlone', name: 'lives-alone', value: oneOf(YES_NO_NOT_KNOWN) },
  { field: 'homeOxygen', name: 'home-oxygen', value: oneOf(YES_NO_NOT_KNOWN) },
];

/** Extensions of a ServiceRequest. */
export const REFERRAL_EXTENSIONS: readonly ExtensionField<keyof ReferralDetails>[] = [
  { field: 'receivedOn', name: 'received-on', value: DATE },
  { field: 'source', name: 'source', value: oneOf(REFERRAL_SOURCES) },
  { field: 'pathway', name: 'pathway', value: oneOf(PATHWAYS) },
  { field: 'hospitalDischargedOn', name: 'hospital-discharged-on', value: DATE },
  { field: 'mrcGrade', name: 'mrc-grade', value: whole(1, 5) },
  { field: 'deliveryMode', name: 'delivery-mode', value: oneOf(DELIVERY_MODES) },
  { field: 'plannedSessions', name: 'planned-sessions', value: whole(1, 60) },
  { field: 'plannedWeeks', name: 'planned-weeks', value: whole(1, 52) },
  { field: 'exercisePlanGivenOn', name: 'exercise-plan-given-on', value: DATE },
];
