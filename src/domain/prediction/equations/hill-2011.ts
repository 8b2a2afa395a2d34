import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of healthy Canadians by age and sex alone. */
export const HILL_2011: PredictionEquation = {
  id: 'hill-2011',
  title: 'Reference equation for the six-minute walk distance, Canada (title not seen)',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy Canadians (from memory)',
  n: '77 (from memory)',
  agesStudiedYears: { min: 45, max: 85, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears'],
  formula: '970.7 - 5.5 x age (years) + 56.3 x sex (male 1, female 0)',
  lowerLimitRule: null,
  citation: readInReviewTable('hill-2011', 'Hill K and others 2011 (not read)', null),
  cautions: ['R2 is blank in the review table.', 'Height and weight are not used.'],
  predict: ({ sexAtBirth, ageYears }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    return { predicted: 970.7 - 5.5 * ageYears + 56.3 * male, lowerLimit: null };
  },
};
