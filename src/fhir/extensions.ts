import type { PatientDetails } from '../domain/patient/patient.js';
import type { ReferralDetails } from '../domain/referral/referral.js';

/** A field of the record for which FHIR R4 has no element, and the extension that carries it, out and in. */
export interface ExtensionField<Field extends string> {
  readonly field: Field;
  /** Last part of the address of the extension. */
  readonly name: string;
  readonly element: 'valueCode' | 'valueInteger' | 'valueDate';
}

/** Extensions of a Patient. The gender stands here too, since FHIR has fewer words for it. */
export const PATIENT_EXTENSIONS = [
  { field: 'nhsNumberMissingReason', name: 'nhs-number-missing-reason', element: 'valueCode' },
  { field: 'sexAtBirth', name: 'sex-at-birth', element: 'valueCode' },
  { field: 'gender', name: 'gender', element: 'valueCode' },
  { field: 'deprivationQuintile', name: 'deprivation-quintile', element: 'valueInteger' },
  { field: 'deprivationIndexYear', name: 'deprivation-index-year', element: 'valueInteger' },
  { field: 'smokingStatus', name: 'smoking-status', element: 'valueCode' },
  { field: 'interpreterNeed', name: 'interpreter-need', element: 'valueCode' },
  { field: 'livesAlone', name: 'lives-alone', element: 'valueCode' },
  { field: 'homeOxygen', name: 'home-oxygen', element: 'valueCode' },
] as const satisfies readonly ExtensionField<keyof PatientDetails>[];

/** Extensions of a ServiceRequest. */
export const REFERRAL_EXTENSIONS = [
  { field: 'receivedOn', name: 'received-on', element: 'valueDate' },
  { field: 'source', name: 'source', element: 'valueCode' },
  { field: 'pathway', name: 'pathway', element: 'valueCode' },
  { field: 'hospitalDischargedOn', name: 'hospital-discharged-on', element: 'valueDate' },
  { field: 'mrcGrade', name: 'mrc-grade', element: 'valueInteger' },
  { field: 'deliveryMode', name: 'delivery-mode', element: 'valueCode' },
  { field: 'plannedSessions', name: 'planned-sessions', element: 'valueInteger' },
  { field: 'plannedWeeks', name: 'planned-weeks', element: 'valueInteger' },
  { field: 'exercisePlanGivenOn', name: 'exercise-plan-given-on', element: 'valueDate' },
] as const satisfies readonly ExtensionField<keyof ReferralDetails>[];
