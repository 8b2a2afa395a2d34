import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of healthy Chileans. */
export const OSSES_2010: PredictionEquation = {
  id: 'osses-2010',
  title: 'Reference values for the six-minute walk distance, Chile (title not seen)',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy Chileans (from memory)',
  n: '175 (from memory)',
  agesStudiedYears: { min: 20, max: 80, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    'Men: 530 - 3.31 x age (years) + 2.36 x height (cm) - 1.49 x weight (kg). ' +
    'Women: 457 - 3.46 x age (years) + 2.61 x height (cm) - 1.57 x weight (kg).',
  lowerLimitRule: null,
  citation: readInReviewTable('osses-2010', 'Osses AR and others 2010, Rev Med Chil (not read)', null),
  cautions: ['R2 0.55 for men and 0.63 for women.', 'Ages of the sample are remembered, not read.'],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => ({
    predicted:
      sexAtBirth === 'male'
        ? 530 - 3.31 * ageYears + 2.36 * heightCm - 1.49 * weightKg
        : 457 - 3.46 * ageYears + 2.61 * heightCm - 1.57 * weightKg,
    lowerLimit: null,
  }),
};
