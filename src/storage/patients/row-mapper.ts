import type { Insertable, Selectable } from 'kysely';
import { plainDate } from '../../domain/calendar/plain-date.js';
import { nameKey } from '../../domain/patient/name-key.js';
import {
  ETHNIC_CATEGORIES,
  GENDERS,
  NHS_NUMBER_MISSING_REASONS,
  SMOKING_STATUSES,
  YES_NO_NOT_KNOWN,
} from '../../domain/patient/patient.js';
import type { Patient, PatientDetails } from '../../domain/patient/patient.js';
import { SEXES_AT_BIRTH } from '../../domain/referral/closed-sets.js';
import { memberOf, optionalMemberOf } from '../row-mapping.js';
import type { PatientTable } from '../record-tables.js';

/** The domain's patient from a stored row. */
export function patientFromRow(row: Selectable<PatientTable>): Patient {
  return {
    id: row.id,
    version: row.version,
    nhsNumber: row.nhs_number,
    nhsNumberMissingReason: optionalMemberOf(NHS_NUMBER_MISSING_REASONS, row.nhs_number_missing_reason),
    familyName: row.family_name,
    givenName: row.given_name,
    bornOn: plainDate(row.born_on),
    sexAtBirth: memberOf(SEXES_AT_BIRTH, row.sex_at_birth),
    gender: memberOf(GENDERS, row.gender),
    ethnicCategory: memberOf(ETHNIC_CATEGORIES, row.ethnic_category),
    deprivationQuintile: row.deprivation_quintile,
    deprivationIndexYear: row.deprivation_index_year,
    smokingStatus: memberOf(SMOKING_STATUSES, row.smoking_status),
    interpreterNeed: memberOf(YES_NO_NOT_KNOWN, row.interpreter_need),
    livesAlone: memberOf(YES_NO_NOT_KNOWN, row.lives_alone),
    homeOxygen: memberOf(YES_NO_NOT_KNOWN, row.home_oxygen),
    gpPracticeCode: row.gp_practice_code,
    mergedInto: row.merged_into,
  };
}

/** The columns of a patient's details. */
export function patientColumns(
  details: PatientDetails,
): Omit<
  Insertable<PatientTable>,
  'id' | 'team_id' | 'version' | 'created_at' | 'created_by' | 'merged_into'
> {
  return {
    nhs_number: details.nhsNumber,
    nhs_number_missing_reason: details.nhsNumberMissingReason,
    family_name: details.familyName,
    family_name_key: nameKey(details.familyName),
    given_name: details.givenName,
    born_on: details.bornOn,
    sex_at_birth: details.sexAtBirth,
    gender: details.gender,
    ethnic_category: details.ethnicCategory,
    deprivation_quintile: details.deprivationQuintile,
    deprivation_index_year: details.deprivationIndexYear,
    smoking_status: details.smokingStatus,
    interpreter_need: details.interpreterNeed,
    lives_alone: details.livesAlone,
    home_oxygen: details.homeOxygen,
    gp_practice_code: details.gpPracticeCode,
  };
}
