import type { Norm } from './norm.js';
import type { PredictionEquation } from './prediction-equation.js';
import { NORMS, PREDICTION_EQUATIONS } from './registered.js';

/** The equation with an id; null where there is none. @example findEquation('probst-2012')?.measureId */
export function findEquation(id: string): PredictionEquation | null {
  return PREDICTION_EQUATIONS.find((equation) => equation.id === id) ?? null;
}

/** All equations that predict a measure. @example equationsFor('one-minute-sit-to-stand') -> one equation */
export function equationsFor(measureId: string): readonly PredictionEquation[] {
  return PREDICTION_EQUATIONS.filter((equation) => equation.measureId === measureId);
}

/** The norm with an id; null where there is none. @example findNorm('strassmann-2013')?.n */
export function findNorm(id: string): Norm | null {
  return NORMS.find((norm) => norm.id === id) ?? null;
}

/** All norms of a measure. @example normsFor('thirty-second-sit-to-stand') -> STEADI, Rikli and Jones */
export function normsFor(measureId: string): readonly Norm[] {
  return NORMS.filter((norm) => norm.measureId === measureId);
}
