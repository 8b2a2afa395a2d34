import { z } from 'zod';
import {
  ETHNIC_CATEGORIES,
  GENDERS,
  NHS_NUMBER_MISSING_REASONS,
  SMOKING_STATUSES,
  YES_NO_NOT_KNOWN,
} from '../../domain/patient/patient.js';
import type { Patient } from '../../domain/patient/patient.js';
import { SEXES_AT_BIRTH } from '../../domain/referral/closed-sets.js';
import { dateField, dateShown, idField, lineField, orNull, reasonField } from '../schema/fields.js';
import { hasSomeChange, NO_CHANGE } from '../schema/changes.js';
import { PAGE_BODY, pageSchema } from '../schema/paging.js';

const nhsNumber = z
  .string()
  .max(20)
  .describe('Ten digits, spaces allowed; null with nhsNumberMissingReason')
  .nullable();
const nhsNumberMissingReason = z.enum(NHS_NUMBER_MISSING_REASONS).nullable();
const deprivationQuintile = z.int().min(1).max(5).describe('1 is the most deprived fifth').nullable();
const deprivationIndexYear = z.int().min(2000).max(2100).nullable();
const gpPracticeCode = z
  .string()
  .regex(/^[A-Z0-9]{3,12}$/, 'A practice code has 3 to 12 capital letters and digits.')
  .nullable();

const FIELDS = {
  familyName: lineField(100),
  givenName: lineField(100),
  bornOn: dateField,
  sexAtBirth: z
    .enum(SEXES_AT_BIRTH)
    .describe('For predicted values; nothing is assumed where it is not known'),
} as const;

export const NewPatient = z
  .strictObject({
    nhsNumber: nhsNumber.default(null),
    nhsNumberMissingReason: nhsNumberMissingReason.default(null),
    ...FIELDS,
    gender: z.enum(GENDERS).default('not-known'),
    ethnicCategory: z
      .enum(ETHNIC_CATEGORIES)
      .default('99')
      .describe('NHS Data Dictionary, 2001: Z is asked and not stated, 99 is not known'),
    deprivationQuintile: deprivationQuintile.default(null),
    deprivationIndexYear: deprivationIndexYear.default(null),
    smokingStatus: z.enum(SMOKING_STATUSES).default('not-known'),
    interpreterNeed: z.enum(YES_NO_NOT_KNOWN).default('not-known'),
    livesAlone: z.enum(YES_NO_NOT_KNOWN).default('not-known'),
    homeOxygen: z.enum(YES_NO_NOT_KNOWN).default('not-known'),
    gpPracticeCode: gpPracticeCode.default(null),
  })
  .meta({ id: 'NewPatient' });

export const PatientCorrection = z
  .strictObject({
    reason: reasonField,
    changes: z
      .strictObject({
        nhsNumber: z.exactOptional(nhsNumber),
        nhsNumberMissingReason: z.exactOptional(nhsNumberMissingReason),
        familyName: z.exactOptional(FIELDS.familyName),
        givenName: z.exactOptional(FIELDS.givenName),
        bornOn: z.exactOptional(FIELDS.bornOn),
        sexAtBirth: z.exactOptional(FIELDS.sexAtBirth),
        gender: z.exactOptional(z.enum(GENDERS)),
        ethnicCategory: z.exactOptional(z.enum(ETHNIC_CATEGORIES)),
        deprivationQuintile: z.exactOptional(deprivationQuintile),
        deprivationIndexYear: z.exactOptional(deprivationIndexYear),
        smokingStatus: z.exactOptional(z.enum(SMOKING_STATUSES)),
        interpreterNeed: z.exactOptional(z.enum(YES_NO_NOT_KNOWN)),
        livesAlone: z.exactOptional(z.enum(YES_NO_NOT_KNOWN)),
        homeOxygen: z.exactOptional(z.enum(YES_NO_NOT_KNOWN)),
        gpPracticeCode: z.exactOptional(gpPracticeCode),
      })
      .refine(hasSomeChange, NO_CHANGE),
  })
  .meta({ id: 'PatientCorrection' });

/** By body, never by address: addresses end up in logs. */
export const PatientSearch = z
  .strictObject({
    nhsNumber: orNull(z.string().max(20)),
    familyName: orNull(lineField(100)).describe('Start of the family name; case and accents do not matter'),
    bornOn: orNull(dateField),
    ...PAGE_BODY,
  })
  .refine((query) => query.nhsNumber !== null || query.familyName !== null || query.bornOn !== null, {
    message: 'Give the NHS number, the start of the family name, or the date of birth.',
  })
  .meta({ id: 'PatientSearch' });

export const PatientShown = z
  .strictObject({
    id: z.string(),
    version: z.int(),
    nhsNumber: z.string().nullable(),
    nhsNumberMissingReason: z.string().nullable(),
    familyName: z.string(),
    givenName: z.string(),
    bornOn: dateShown,
    sexAtBirth: z.string(),
    gender: z.string(),
    ethnicCategory: z.string(),
    deprivationQuintile: z.int().nullable(),
    deprivationIndexYear: z.int().nullable(),
    smokingStatus: z.string(),
    interpreterNeed: z.string(),
    livesAlone: z.string(),
    homeOxygen: z.string(),
    gpPracticeCode: z.string().nullable(),
    mergedInto: z
      .string()
      .nullable()
      .describe('The record in which the person is kept, where this one is a duplicate that was merged'),
  })
  .meta({ id: 'Patient' });

export const PatientPage = pageSchema(PatientShown, 'PatientPage');
export const PatientParams = z.strictObject({ patientId: idField });

/** What a client is shown of a patient: each field by name. */
export function presentPatient(patient: Patient): z.output<typeof PatientShown> {
  return {
    id: patient.id,
    version: patient.version,
    nhsNumber: patient.nhsNumber,
    nhsNumberMissingReason: patient.nhsNumberMissingReason,
    familyName: patient.familyName,
    givenName: patient.givenName,
    bornOn: patient.bornOn,
    sexAtBirth: patient.sexAtBirth,
    gender: patient.gender,
    ethnicCategory: patient.ethnicCategory,
    deprivationQuintile: patient.deprivationQuintile,
    deprivationIndexYear: patient.deprivationIndexYear,
    smokingStatus: patient.smokingStatus,
    interpreterNeed: patient.interpreterNeed,
    livesAlone: patient.livesAlone,
    homeOxygen: patient.homeOxygen,
    gpPracticeCode: patient.gpPracticeCode,
    mergedInto: patient.mergedInto,
  };
}
