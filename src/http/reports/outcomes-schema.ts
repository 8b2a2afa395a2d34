import { z } from 'zod';
import type { Outcomes, ThresholdUsed } from '../../reports/outcomes/outcomes-model.js';
import { CitationShown, presentCitation } from '../catalogue/citation-schema.js';
import { dateShown } from '../schema/fields.js';

const ThresholdUsedShown = z
  .strictObject({
    thresholdId: z.string(),
    value: z.number(),
    amountsTo: z.string(),
    chosenBy: z.string(),
    population: z.string(),
    populationNote: z.string().nullable(),
    source: CitationShown,
  })
  .meta({ id: 'ThresholdUsed' });

const EndShown = z
  .strictObject({
    assessmentId: z.string(),
    assessedOn: dateShown,
    value: z.number(),
    hadPracticeWalk: z.boolean().nullable(),
    isCeiling: z.boolean(),
    conditions: z.record(z.string(), z.string().nullable()),
    predicted: z
      .strictObject({
        equationId: z.string(),
        predicted: z.number().nullable(),
        percentPredicted: z.number().nullable(),
        lowerLimit: z.number().nullable(),
        isBelowLowerLimit: z.boolean().nullable(),
        beyondAgesStudied: z.boolean(),
        notPredictedReason: z.string().nullable(),
      })
      .nullable(),
  })
  .meta({ id: 'EndResult' });

export const OutcomesShown = z
  .strictObject({
    referralId: z.string(),
    stage: z.string(),
    asAt: dateShown,
    settingsVersion: z.int(),
    measures: z.array(
      z.strictObject({
        measureId: z.string(),
        name: z.string(),
        unit: z.string(),
        betterWhen: z.string(),
        baseline: EndShown.nullable(),
        discharge: EndShown.nullable(),
        change: z.number().nullable().describe('Discharge minus baseline'),
        improvement: z.number().nullable().describe('Positive is always better'),
        class: z.enum(['improved', 'little-change', 'worse', 'change-only']).nullable(),
        isLikeForLike: z.boolean().nullable(),
        differences: z.array(z.string()),
        noPairReason: z.string().nullable(),
        improvementThreshold: ThresholdUsedShown.nullable(),
        worseningThreshold: ThresholdUsedShown.nullable(),
      }),
    ),
    sessions: z
      .strictObject({
        supervisedAttended: z.int(),
        supervisedExpected: z.int(),
        unsupervisedAttended: z.int(),
        diaryWeeks: z.int(),
        diarySessionsReported: z.int(),
      })
      .describe('What was supervised, what was not and what is only reported are never added up'),
    cautions: z.array(
      z.strictObject({
        id: z.string(),
        measureId: z.string().nullable(),
        text: z.string(),
        assessmentId: z.string().nullable(),
        source: CitationShown.nullable(),
        mustBeAcknowledged: z.boolean(),
        isAcknowledged: z.boolean(),
      }),
    ),
  })
  .meta({ id: 'Outcomes' });

/** What a client is shown: the model, each field by name, decimals at full precision. */
export function presentOutcomes(outcomes: Outcomes): z.output<typeof OutcomesShown> {
  return {
    referralId: outcomes.referralId,
    stage: outcomes.stage,
    asAt: outcomes.asAt,
    settingsVersion: outcomes.settingsVersion,
    measures: outcomes.measures.map((measure) => ({
      ...measure,
      baseline: measure.baseline === null ? null : { ...measure.baseline },
      discharge: measure.discharge === null ? null : { ...measure.discharge },
      differences: [...measure.differences],
      improvementThreshold: presentThreshold(measure.improvementThreshold),
      worseningThreshold: presentThreshold(measure.worseningThreshold),
    })),
    sessions: { ...outcomes.sessions },
    cautions: outcomes.cautions.map((caution) => ({
      ...caution,
      source: caution.source === null ? null : presentCitation(caution.source),
    })),
  };
}

function presentThreshold(threshold: ThresholdUsed | null): z.output<typeof ThresholdUsedShown> | null {
  if (threshold === null) return null;
  const { thresholdId, value, amountsTo, chosenBy, population, populationNote } = threshold;
  return {
    thresholdId,
    value,
    amountsTo,
    chosenBy,
    population,
    populationNote,
    source: presentCitation(threshold.source),
  };
}
