import type { PredictionEquation } from '../prediction-equation.js';

/** Incremental shuttle walk distance of healthy Brazilians of 40 years and more; coefficients from memory, never a default. */
export const DOURADO_2013: PredictionEquation = {
  id: 'dourado-2013',
  title:
    'Reference values for the incremental shuttle walk test in healthy subjects: from the walk distance to physiological responses',
  measureId: 'incremental-shuttle-walk-distance',
  population: 'Healthy Brazilians of 40 years and more',
  n: '103 (49 men)',
  agesStudiedYears: { min: 40, max: null, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    '347.7 - 7.2 x age (years) - 3.0 x weight (kg) + 472.3 x height (m) + 137.2 x sex (male 1, female 0)',
  lowerLimitRule: null,
  citation: {
    id: 'dourado-2013',
    text: 'Dourado VZ and others 2013, J Bras Pneumol 39:190-197 (abstract read, it prints no coefficients; coefficients, volume, pages and DOI from memory)',
    doi: '10.1590/S1806-37132013000200010',
    status: 'value-from-memory',
  },
  cautions: [
    'Coefficients are remembered with low confidence: check before use, and never as a default.',
    'Printed for height in metres; the height recorded in centimetres is converted.',
    'The oldest age studied was not seen, so every age is marked.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    const heightM = heightCm / 100;
    return {
      predicted: 347.7 - 7.2 * ageYears - 3 * weightKg + 472.3 * heightM + 137.2 * male,
      lowerLimit: null,
    };
  },
};
