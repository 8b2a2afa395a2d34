import type { App } from '../app-types.js';
import { changeCalculation } from './change-calculation.js';
import { predictionCalculation } from './prediction-calculation.js';
import { scoreCalculation } from './score-calculation.js';

/** Calculations without a record, so that others can check ours: nothing is stored. */
export function calculationRoutes(app: App): void {
  predictionCalculation(app);
  scoreCalculation(app);
  changeCalculation(app);
}
