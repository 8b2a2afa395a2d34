import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of healthy adults of 20 to 50 years. */
export const CHETTA_2006: PredictionEquation = {
  id: 'chetta-2006',
  title: 'Reference values for the 6-min walk test in healthy subjects 20-50 years old',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy adults, Italy (from memory)',
  n: '102 (48 men) (from memory)',
  agesStudiedYears: { min: 20, max: 50, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm'],
  formula: '518.853 + 1.25 x height (cm) - 2.816 x age (years) - 39.07 x sex (male 0, female 1)',
  lowerLimitRule: null,
  citation: readInReviewTable(
    'chetta-2006',
    'Chetta A and others 2006, Respir Med 100:1573-1578 (not read; DOI from memory)',
    '10.1016/j.rmed.2006.01.001',
  ),
  cautions: [
    'Ages 20 to 50 only: most people in rehabilitation are older and are marked.',
    'The coding of sex is inferred: men walk further than women.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm }) => {
    const female = sexAtBirth === 'female' ? 1 : 0;
    return { predicted: 518.853 + 1.25 * heightCm - 2.816 * ageYears - 39.07 * female, lowerLimit: null };
  },
};
