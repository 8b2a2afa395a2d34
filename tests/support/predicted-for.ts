import { expect } from 'vitest';
import type { KnownInputs } from '../../src/domain/prediction/known-inputs.js';
import { predictResult } from '../../src/domain/prediction/predict.js';
import type { PredictionEquation } from '../../src/domain/prediction/prediction-equation.js';

/** The prediction of a person for whom there must be one. */
export function predictedFor(equation: PredictionEquation, person: KnownInputs) {
  const result = predictResult(equation, person);
  if (result.kind !== 'predicted') throw new Error(`${equation.id}: ${result.reason}`);
  return result;
}

/** A person for whom an equation was worked by hand, with what must come out. */
export interface WorkedPerson extends KnownInputs {
  readonly expected: number;
  readonly lowerLimit: number | null;
  readonly isBeyondAges: boolean;
}

/** Four decimals are given, so the value itself lies within half a unit of the fourth. */
const TOLERANCE = 0.000_05 + 1e-9;

/** Holds an equation to a worked person, through the same function as the service. */
export function expectWorked(equation: PredictionEquation, worked: WorkedPerson): void {
  const { expected, lowerLimit, isBeyondAges, ...person } = worked;
  const result = predictedFor(equation, person);
  expect(Math.abs(result.predicted - expected)).toBeLessThanOrEqual(TOLERANCE);
  if (lowerLimit === null) expect(result.lowerLimit).toBeNull();
  else expect(Math.abs((result.lowerLimit ?? Number.NaN) - lowerLimit)).toBeLessThanOrEqual(TOLERANCE);
  expect(result.beyondAgesStudied).toBe(isBeyondAges);
}

/** How much further the second person is predicted to get than the first: what isolates one coefficient. */
export function difference(equation: PredictionEquation, from: KnownInputs, to: KnownInputs): number {
  return predictedFor(equation, to).predicted - predictedFor(equation, from).predicted;
}
