import { z } from 'zod';
import { DIAGNOSES, SEXES_AT_BIRTH } from '../../domain/referral/closed-sets.js';
import { CitationShown } from '../catalogue/catalogue-schema.js';
import { numberField, orNull } from '../schema/fields.js';

const id = z.string().max(80);

export const PredictionCalculation = z
  .strictObject({
    equationId: id,
    sexAtBirth: orNull(z.enum(SEXES_AT_BIRTH)).describe('Nothing is assumed where it is not known'),
    ageYears: orNull(numberField).describe('Completed years'),
    heightCm: orNull(numberField),
    weightKg: orNull(numberField),
    peakHeartRatePercent: orNull(numberField).describe('Peak heart rate in percent of 220 less age'),
    isActive: orNull(z.boolean()),
    value: orNull(z.number().min(0).max(10_000)).describe(
      'A result to be shown as a share of the prediction',
    ),
  })
  .meta({ id: 'PredictionCalculation' });

export const PredictionCalculated = z
  .strictObject({
    equationId: z.string(),
    predicted: z.number().nullable(),
    lowerLimit: z.number().nullable(),
    beyondAgesStudied: z.boolean(),
    ceilingNote: z.string().nullable(),
    percentPredicted: z.number().nullable(),
    isBelowLowerLimit: z.boolean().nullable(),
    notPredictedReason: z.string().nullable(),
    caution: z.string(),
  })
  .meta({ id: 'PredictionCalculated' });

export const ScoreCalculation = z
  .strictObject({
    questionnaire: id,
    items: z.array(numberField.nullable()).max(100).describe('In printed order, null where unanswered'),
  })
  .meta({ id: 'ScoreCalculation' });

export const ScoreCalculated = z
  .strictObject({
    questionnaire: z.string(),
    scores: z.array(
      z.strictObject({
        measureId: z.string(),
        value: z.number().nullable(),
        answeredItems: z.int().nullable(),
        ofItems: z.int().nullable(),
        notScoredReason: z.string().nullable(),
      }),
    ),
    missingItemRule: z.strictObject({ text: z.string(), source: CitationShown }),
  })
  .meta({ id: 'ScoreCalculated' });

export const ChangeCalculation = z
  .strictObject({
    measureId: id,
    baseline: numberField,
    discharge: numberField,
    diagnosis: z.enum(DIAGNOSES).default('not-known'),
    thresholdId: orNull(id).describe('Null takes the default of the catalogue'),
  })
  .meta({ id: 'ChangeCalculation' });

export const ChangeCalculated = z
  .strictObject({
    measureId: z.string(),
    change: z.number().describe('Discharge minus baseline'),
    improvement: z.number().describe('Positive is always better'),
    class: z.enum(['improved', 'little-change', 'worse', 'change-only']),
    isExactlyAtThreshold: z.boolean().nullable(),
    thresholdId: z.string().nullable(),
    thresholdValue: z.number().nullable(),
    amountsTo: z.string().nullable(),
    populationNote: z.string().nullable(),
    source: CitationShown.nullable(),
  })
  .meta({ id: 'ChangeCalculated' });
