import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of healthy adults of 55 to 75 years, best of three walks; the form without FEV1. */
export const CAMARRI_2006: PredictionEquation = {
  id: 'camarri-2006',
  title: 'Six minute walk distance in healthy subjects aged 55-75 years (form without FEV1)',
  measureId: 'six-minute-walk-distance',
  population: 'Population sample, Caucasian, Perth, Australia; greatest of three walks',
  n: '70 (33 men)',
  agesStudiedYears: { min: 55, max: 75, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    '216.90 + 4.12 x height (cm) - 1.75 x age (years) - 1.15 x weight (kg) - 34.04 x sex (male 0, female 1)',
  lowerLimitRule: null,
  citation: readInReviewTable(
    'camarri-2006',
    'Camarri B and others 2006, Respir Med 100:658-665 (first page read: 659 m, SD 62, range 484 to 820; DOI from memory)',
    '10.1016/j.rmed.2005.08.003',
  ),
  cautions: [
    'Narrow range of ages, 55 to 75 years.',
    'Best of three walks: reads high against a single walk.',
    'The coding of sex is inferred: the paper says that men walked 59 m further.',
    'The form with FEV1 is another equation and is not offered: FEV1 is abnormal in people in rehabilitation.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const female = sexAtBirth === 'female' ? 1 : 0;
    const predicted = 216.9 + 4.12 * heightCm - 1.75 * ageYears - 1.15 * weightKg - 34.04 * female;
    return { predicted, lowerLimit: null };
  },
};
