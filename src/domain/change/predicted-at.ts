import { ageInYears } from '../calendar/plain-date.js';
import type { AssessmentFacts, ReferralFacts } from '../cohort/referral-facts.js';
import { toNumber } from '../exact/fraction.js';
import type { PredictedResult } from '../prediction/predict.js';
import { isBelowLowerLimit, percentPredicted, predictResult } from '../prediction/predict.js';
import type { PredictionEquation } from '../prediction/prediction-equation.js';
import type { ResultAt } from './pair.js';

/** A result beside its prediction; the percentage is null where there is no prediction. */
export interface PredictedAt {
  readonly prediction: PredictedResult;
  readonly percent: number | null;
  /** Null where there is no prediction, or the equation gives no limit. */
  readonly isBelowLowerLimit: boolean | null;
}

/**
 * A result in percent of what one equation predicts for the person on that day.
 *
 * Height and weight are those of the assessment; where it has none, the latest that an earlier assessment of the same
 * referral has, because few teams measure height twice in eight weeks. Nothing else is filled in.
 *
 * @param at the result and the assessment at which it was had
 * @example predictedAt(enright-sherrill-1998, 281.33 m of a man of 60, 174 cm, 82 kg) -> 50 %
 */
export function predictedAt(equation: PredictionEquation, at: ResultAt, facts: ReferralFacts): PredictedAt {
  const prediction = predictResult(equation, {
    sexAtBirth: facts.patient.sexAtBirth,
    ageYears: ageInYears(facts.patient.bornOn, at.assessment.assessedOn),
    heightCm: latestKnown('heightCm', at.assessment, facts),
    weightKg: latestKnown('weightKg', at.assessment, facts),
  });
  if (prediction.kind === 'not-predicted') return { prediction, percent: null, isBelowLowerLimit: null };
  const value = toNumber(at.result.value);
  return {
    prediction,
    percent: percentPredicted(value, prediction.predicted),
    isBelowLowerLimit: isBelowLowerLimit(value, prediction.lowerLimit),
  };
}

function latestKnown(
  field: 'heightCm' | 'weightKg',
  assessment: AssessmentFacts,
  facts: ReferralFacts,
): number | null {
  if (assessment[field] !== null) return assessment[field];
  let known: number | null = null;
  for (const earlier of facts.assessments) {
    if (earlier.assessedOn <= assessment.assessedOn && earlier[field] !== null) known = earlier[field];
  }
  return known;
}
