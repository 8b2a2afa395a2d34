import type { PersonFacts } from '../../domain/cohort/referral-facts.js';
import { ETHNIC_CATEGORIES, SMOKING_STATUSES, YES_NO_NOT_KNOWN } from '../../domain/patient/patient.js';
import { SEXES_AT_BIRTH } from '../../domain/referral/closed-sets.js';
import { memberOf, storedDate } from '../row-mapping.js';
import type { PatientTable } from '../record-tables.js';

/** What is read of a patient beside each referral. */
export const PERSON_COLUMNS = [
  'patient.sex_at_birth',
  'patient.born_on',
  'patient.ethnic_category',
  'patient.deprivation_quintile',
  'patient.interpreter_need',
  'patient.home_oxygen',
  'patient.smoking_status',
  'patient.nhs_number',
  'patient.gp_practice_code',
] as const;

/** The facts of a person; neither the number nor the practice itself is read into a report. */
export function personFacts(
  row: Pick<
    PatientTable,
    | 'sex_at_birth'
    | 'born_on'
    | 'ethnic_category'
    | 'deprivation_quintile'
    | 'interpreter_need'
    | 'home_oxygen'
    | 'smoking_status'
    | 'nhs_number'
    | 'gp_practice_code'
  >,
): PersonFacts {
  return {
    sexAtBirth: memberOf(SEXES_AT_BIRTH, row.sex_at_birth),
    bornOn: storedDate(row.born_on),
    ethnicCategory: memberOf(ETHNIC_CATEGORIES, row.ethnic_category),
    deprivationQuintile: row.deprivation_quintile,
    interpreterNeed: memberOf(YES_NO_NOT_KNOWN, row.interpreter_need),
    homeOxygen: memberOf(YES_NO_NOT_KNOWN, row.home_oxygen),
    smokingStatus: memberOf(SMOKING_STATUSES, row.smoking_status),
    hasNhsNumber: row.nhs_number !== null,
    hasGpPractice: row.gp_practice_code !== null,
  };
}
