import { z } from 'zod';
import { InErrorShown, presentInError } from '../schema/in-error.js';
import { pageSchema } from '../schema/paging.js';
import type { Assessment } from '../../domain/assessment/assessment.js';
import { notScoredOf } from '../../domain/assessment/not-scored.js';
import { toNumber } from '../../domain/exact/fraction.js';
import {
  NOT_DONE_REASONS,
  SAFETY_SCREENS,
  STOP_REASONS,
  TEST_PLACES,
  TIMEPOINTS,
  WALKING_AIDS,
} from '../../domain/referral/closed-sets.js';
import {
  dateField,
  dateShown,
  idField,
  numberField,
  orNull,
  reasonField,
  textField,
} from '../schema/fields.js';

const number = orNull(numberField);
const notDoneReason = orNull(z.enum(NOT_DONE_REASONS)).describe(
  'Why there is no result; zero metres walked is a result',
);
const place = z.enum(TEST_PLACES).default('course').describe('On a measured course, or at home');
const testName = z.string().max(80).describe('Id of the test or questionnaire, as /measures lists them');

const WalkTest = z.strictObject({
  test: testName,
  attempt: z.union([z.literal(1), z.literal(2)]).describe('Two attempts of the same test: the better counts'),
  place,
  distanceM: number.describe('Metres; ISWT in steps of 10'),
  level: number.describe('ISWT: last level begun, with `shuttles` completed in it'),
  shuttles: number,
  timeS: number.describe('ESWT: seconds'),
  speedLevel: number.describe('ESWT: 1 to 16'),
  courseLengthM: number,
  walkingAid: orNull(z.enum(WALKING_AIDS)),
  oxygenLPerMin: number.describe('0 is room air; null is not recorded'),
  startSpo2Percent: number,
  lowestSpo2Percent: number,
  startHeartRateBpm: number,
  peakHeartRateBpm: number,
  startBreathlessness: number.describe('Borg CR10, 0 to 10'),
  endBreathlessness: number,
  startFatigue: number,
  endFatigue: number,
  stops: number,
  stopReason: orNull(z.enum(STOP_REASONS)),
  notDoneReason,
});

const SitToStand = z.strictObject({
  test: testName,
  place,
  repetitions: number,
  timeS: number,
  handsUsed: orNull(z.boolean()),
  chairHeightCm: number,
  notDoneReason,
});

const Questionnaire = z.strictObject({
  questionnaire: testName,
  form: orNull(z.string().max(60)),
  items: orNull(z.array(numberField.nullable()).max(100)).describe('In printed order, null where unanswered'),
  typedScores: z
    .array(z.strictObject({ measure: z.string().max(80), value: numberField }))
    .max(10)
    .default([]),
  notDoneReason,
});

const PhysicalTest = z.strictObject({
  test: testName,
  place,
  conditions: z
    .record(z.string().max(40), z.string().max(60))
    .default({})
    .describe('Condition id to value, such as side and device'),
  parts: orNull(z.record(z.string().max(40), z.union([numberField, z.literal('unable')]))).describe(
    'Part id to seconds, or "unable"',
  ),
  measure: orNull(z.string().max(80)).describe('Where a test has two, in different units'),
  value: number,
  notDoneReason,
});

const Entry = z.strictObject({
  timepoint: z.enum(TIMEPOINTS),
  assessedOn: dateField,
  siteId: idField,
  heightCm: number,
  weightKg: number,
  spirometry: orNull(z.strictObject({ fev1L: number, fev1PercentPredicted: number, fev1FvcPercent: number })),
  resting: orNull(
    z.strictObject({
      spo2Percent: number,
      heartRateBpm: number,
      systolicMmHg: number,
      diastolicMmHg: number,
    }),
  ),
  safetyScreen: z.enum(SAFETY_SCREENS).default('not-recorded'),
  safetyFindings: z
    .array(z.string().max(80))
    .max(60)
    .default([])
    .describe('Ids of the items of the safety checklist that were found in the person'),
  safetyNote: orNull(textField(2000)),
  walkTests: z.array(WalkTest).max(10).default([]),
  sitToStands: z.array(SitToStand).max(5).default([]),
  questionnaires: z.array(Questionnaire).max(20).default([]),
  physicalTests: z.array(PhysicalTest).max(10).default([]),
  notes: orNull(textField(5000)),
  confirmed: z
    .array(z.string().max(120))
    .max(100)
    .default([])
    .describe('JSON Pointers of unusual values that were checked, such as /walkTests/0/distanceM'),
});

export const NewAssessment = Entry.meta({ id: 'NewAssessment' });

/** The whole entry once more, so that pointers to its fields are the same in both. */
export const AssessmentCorrection = z
  .strictObject({ reason: reasonField, ...Entry.shape })
  .meta({ id: 'AssessmentCorrection' });

export const AssessmentParams = z.strictObject({ assessmentId: idField });

export const AssessmentShown = z
  .strictObject({
    id: z.string(),
    version: z.int(),
    referralId: z.string(),
    recordedAt: z.string(),
    recordedBy: z.string(),
    correctionReason: z.string().nullable(),
    enteredInError: InErrorShown,
    scores: z
      .array(
        z.strictObject({
          measure: z.string(),
          value: z.number().describe('The exact score, as the nearest decimal number'),
          basis: z.enum(['items', 'typed']),
        }),
      )
      .describe('Computed from items where they were given'),
    physicalResults: z.array(
      z.strictObject({
        test: z.string(),
        measure: z.string(),
        value: z.number(),
        basis: z.enum(['parts', 'typed']),
      }),
    ),
    notScored: z
      .array(z.strictObject({ measure: z.string(), reason: z.string() }))
      .describe('Measures without a number although their test was done, and why'),
    entry: z.looseObject({ timepoint: z.string(), assessedOn: dateShown }).describe('As NewAssessment'),
  })
  .meta({ id: 'Assessment' });

export const AssessmentPage = pageSchema(AssessmentShown, 'AssessmentPage');

/** What a client is shown of an assessment. */
export function presentAssessment(assessment: Assessment): z.output<typeof AssessmentShown> {
  return {
    id: assessment.id,
    version: assessment.version,
    referralId: assessment.referralId,
    recordedAt: assessment.recordedAt,
    recordedBy: assessment.recordedBy,
    correctionReason: assessment.correctionReason,
    enteredInError: presentInError(assessment.enteredInError),
    scores: assessment.scores.map(({ measure, value, basis }) => ({
      measure,
      value: toNumber(value),
      basis,
    })),
    physicalResults: assessment.physicalResults.map(({ test, measure, value, basis }) => ({
      test,
      measure,
      value: toNumber(value),
      basis,
    })),
    notScored: notScoredOf(assessment).map(({ measure, reason }) => ({ measure, reason })),
    entry: { ...assessment.entry },
  };
}
