import { bodyMassIndex } from '../body-mass-index.js';
import type { PredictionEquation } from '../prediction-equation.js';

/** Incremental shuttle walk distance of healthy Brazilians by age, sex and body mass index. */
export const PROBST_2012: PredictionEquation = {
  id: 'probst-2012',
  title: 'Reference values for the incremental shuttle walking test',
  measureId: 'incremental-shuttle-walk-distance',
  population: 'Healthy Brazilians of a broad age range; no ceiling at level 12, distances of 210 to 1820 m',
  n: '242 (102 men)',
  agesStudiedYears: { min: 18, max: 83, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    '1449.701 - 11.735 x age (years) + 241.897 x sex (male 1, female 0) ' +
    '- 5.686 x body mass index (kg/m2, unrounded)',
  lowerLimitRule: null,
  citation: {
    id: 'probst-2012',
    text: 'Probst VS and others 2012, Respir Med 106:243-248 (abstract read; DOI from memory)',
    doi: '10.1016/j.rmed.2011.07.023',
    status: 'retrieved',
  },
  cautions: [
    'The sample walked beyond level 12: a standard test stops at 1020 m, so a young adult may be held below 100 %.',
    'Median 810 m (interquartile range 572 to 1030).',
    'Ages of the sample are remembered, not read.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    const index = bodyMassIndex({ heightCm, weightKg });
    return { predicted: 1449.701 - 11.735 * ageYears + 241.897 * male - 5.686 * index, lowerLimit: null };
  },
};
