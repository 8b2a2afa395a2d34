import { ISWT_MAX_DISTANCE_M } from './iswt-protocol.js';
import { type Absence, firstAbsence, type KnownInputs, knownSex, neededInputs } from './known-inputs.js';
import type { PredictionEquation } from './prediction-equation.js';

/** A predicted result, unrounded and in the unit of the measure, or the reason why there is none. */
export type PredictedResult =
  | {
      readonly kind: 'predicted';
      readonly equationId: string;
      readonly predicted: number;
      /** Lower limit of normal (LLN); null where the source gives none. */
      readonly lowerLimit: number | null;
      /** Outside the ages of the sample, or on a side whose limit was never seen: left out of summaries. */
      readonly beyondAgesStudied: boolean;
      /** Says that the test stops short of the prediction; null where it does not. */
      readonly ceilingNote: string | null;
    }
  | {
      readonly kind: 'not-predicted';
      readonly equationId: string;
      readonly reason: Absence['reason'];
      readonly words: string;
    };

/** What stands wherever a prediction is shown. */
export const PREDICTION_CAUTION =
  'Predicted for healthy people of one region and one way of testing, not for people in rehabilitation. ' +
  'Percentages by different equations are never compared.';

/**
 * Predicts a person's result by one equation. Nothing is assumed and nothing is clipped.
 *
 * Shows a result as a share of what is expected of healthy people; it decides nothing.
 *
 * @param equation the equation chosen
 * @param person what is known; only what the equation needs is looked at
 * @returns the prediction with its marks; or the first reason why there is none, in the order sex, age, height, weight,
 *   heart rate, activity. Ages of whole 18 to 110 years, heights of 120 to 220 cm and weights of 25 to 300 kg are taken
 * @source The equation's own citation.
 * @example man of 60, 174 cm, 82 kg by enright-sherrill-1998 -> 562.66 m, lower limit 409.66 m
 */
export function predictResult(equation: PredictionEquation, person: KnownInputs): PredictedResult {
  const absence = firstAbsence(equation, person);
  if (absence !== null) return { kind: 'not-predicted', equationId: equation.id, ...absence };
  const { predicted, lowerLimit } = equation.predict(neededInputs(equation, person));
  if (!Number.isFinite(predicted)) throw new Error(`${equation.id} gave no number`);
  if (predicted <= 0) {
    return {
      kind: 'not-predicted',
      equationId: equation.id,
      reason: 'no-positive-value',
      words: 'The equation gives no positive value for this age and size.',
    };
  }
  return {
    kind: 'predicted',
    equationId: equation.id,
    predicted,
    lowerLimit,
    beyondAgesStudied: isBeyondAgesStudied(equation, person),
    ceilingNote: ceilingNote(equation, predicted),
  };
}

/**
 * Result in percent of the predicted value, unrounded.
 *
 * @param value the result, in the unit of the measure; 0 is a result
 * @param predicted by one equation, above zero; percentages by different equations are never compared
 * @throws RangeError when the prediction is not above zero
 * @example percentPredicted(281.33, 562.66) -> 50
 */
export function percentPredicted(value: number, predicted: number): number {
  if (!(predicted > 0)) throw new RangeError(`Not a prediction: ${predicted}`);
  return (100 * value) / predicted;
}

/**
 * Whether a result lies below the lower limit of normal. A result that equals the limit does not.
 *
 * @returns null where the equation gives no limit
 * @example isBelowLowerLimit(409, 409.66) -> true
 */
export function isBelowLowerLimit(value: number, lowerLimit: number | null): boolean | null {
  if (lowerLimit === null) return null;
  // Limits come from coefficients of at most three decimals: what is smaller than a millionth is floating point noise.
  return Math.round((lowerLimit - value) * 1_000_000) > 0;
}

/**
 * Peak heart rate of a walk in percent of the predicted maximum of 220 less age, unrounded.
 *
 * @param peakHeartRateBpm beats per minute
 * @param ageYears completed years, below 220
 * @source 220 less age: as printed under Table 3 of PMC5734602; remembered for Casanova 2011.
 * @example peakHeartRatePercent(120, 60) -> 75
 */
export function peakHeartRatePercent(peakHeartRateBpm: number, ageYears: number): number {
  if (!(ageYears < 220)) throw new RangeError(`Not an age in years: ${ageYears}`);
  return (100 * peakHeartRateBpm) / (220 - ageYears);
}

function isBeyondAgesStudied(equation: PredictionEquation, person: KnownInputs): boolean {
  const ofWomen = knownSex(person) === 'female' ? equation.agesStudiedWomenYears : undefined;
  const { min, max } = ofWomen ?? equation.agesStudiedYears;
  const age = person.ageYears ?? null;
  if (age === null || min === null || max === null) return true;
  return age < min || age > max;
}

function ceilingNote(equation: PredictionEquation, predicted: number): string | null {
  if (equation.measureId !== 'incremental-shuttle-walk-distance' || predicted <= ISWT_MAX_DISTANCE_M)
    return null;
  return `The test stops at ${ISWT_MAX_DISTANCE_M} m, short of the prediction: 100 % of predicted cannot be reached.`;
}
