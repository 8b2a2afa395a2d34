import type { PredictionEquation } from '../prediction-equation.js';

/** Incremental shuttle walk distance of older Brazilian adults; coefficients from memory. */
export const JURGENSEN_2011: PredictionEquation = {
  id: 'jurgensen-2011',
  title: 'The incremental shuttle walk test in older Brazilian adults',
  measureId: 'incremental-shuttle-walk-distance',
  population: 'Healthy Brazilians, mean age 59 years (SD 10); two walks',
  n: '131 (61 men)',
  agesStudiedYears: { min: 40, max: 84, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    '374.004 - 6.782 x age (years) - 2.328 x weight (kg) + 3.865 x height (cm) + 115.937 x sex (male 1, female 0)',
  lowerLimitRule: null,
  citation: {
    id: 'jurgensen-2011',
    text: 'Jurgensen SP and others 2011, Respiration 81:223-228 (abstract read: variables, n, R2 0.503 and group means; coefficients and DOI from memory)',
    doi: '10.1159/000319037',
    status: 'value-from-memory',
  },
  cautions: [
    'Coefficients and coding of sex are remembered, not read: check before use.',
    'Group means that were read: men 606 m (SD 167), women 443 m (SD 117).',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    const predicted = 374.004 - 6.782 * ageYears - 2.328 * weightKg + 3.865 * heightCm + 115.937 * male;
    return { predicted, lowerLimit: null };
  },
};
