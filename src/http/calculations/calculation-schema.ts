import { z } from 'zod';
import { DIAGNOSES, SEXES_AT_BIRTH } from '../../domain/referral/closed-sets.js';
import { CitationShown } from '../catalogue/citation-schema.js';
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
    value: orNull(numberField).describe('A result to be shown as a share of the prediction'),
  })
  .meta({ id: 'PredictionCalculation' });

export const PredictionCalculated = z
  .strictObject({
    equationId: z.string(),
    predicted: z.number().nullable(),
    lowerLimit: z.number().nullable(),
    beyondAgesStudied: z.boolean().nullable(),
    ceilingNote: z.string().nullable(),
    percentPredicted: z.number().nullable(),
    isBelowLowerLimit: z.boolean().nullable(),
    notPredictedReason: z.string().nullable().describe('Why there is no prediction; nothing is assumed'),
    source: CitationShown,
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
    profile: z
      .string()
      .nullable()
      .describe('EQ-5D-5L: its five levels in one, such as 21111; it has no score from items'),
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
    form: orNull(z.string().max(60)).describe('Form or value set of both ends, where the score needs one'),
  })
  .meta({ id: 'ChangeCalculation' });

const ThresholdUsed = z.strictObject({
  thresholdId: z.string(),
  thresholdValue: z.number(),
  amountsTo: z.string(),
  populationNote: z.string().nullable(),
  source: CitationShown,
});

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
    worsening: ThresholdUsed.nullable().describe(
      'What judges getting worse; null where the threshold for improvement does, turned round',
    ),
  })
  .meta({ id: 'ChangeCalculated' });
