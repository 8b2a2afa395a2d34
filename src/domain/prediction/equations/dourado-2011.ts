import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of healthy Brazilians; the form without grip strength. */
export const DOURADO_2011: PredictionEquation = {
  id: 'dourado-2011',
  title:
    'Reference equations for the six-minute walk distance, Brazil (form without grip strength; title not seen)',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy Brazilians, mean age 60 years (SD 9)',
  n: '98: 90 for the equation (40 men), 8 for validation',
  agesStudiedYears: { min: 40, max: null, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    '299.296 - 2.728 x age (years) - 2.160 x weight (kg) + 361.731 x height (m) + 56.386 x sex (male 1, female 0)',
  lowerLimitRule: null,
  citation: readInReviewTable(
    'dourado-2011',
    'Dourado VZ and others 2011, J Bras Pneumol (abstract read: n and R2 0.545, no coefficients)',
    null,
  ),
  cautions: [
    'Printed for height in metres; the height recorded in centimetres is converted.',
    'The oldest age studied was not seen, so every age is marked.',
    'Validation in 8 people: measured and predicted differed by 14 m (SD 57).',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    const heightM = heightCm / 100;
    const predicted = 299.296 - 2.728 * ageYears - 2.16 * weightKg + 361.731 * heightM + 56.386 * male;
    return { predicted, lowerLimit: null };
  },
};
