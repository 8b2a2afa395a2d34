import { bodyMassIndex } from '../body-mass-index.js';
import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of middle-aged and elderly adults, better of two walks. */
export const JENKINS_2009: PredictionEquation = {
  id: 'jenkins-2009',
  title: 'Regression equations to predict 6-minute walk distance in middle-aged and elderly adults',
  measureId: 'six-minute-walk-distance',
  population: 'Caucasian Australians, Perth; better of two walks',
  n: '109 (48 men)',
  agesStudiedYears: { min: 45, max: 85, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    'Men: 867 - 5.71 x age (years) + 1.03 x height (cm). ' +
    'Women: 525 - 2.86 x age (years) + 2.71 x height (cm) - 6.22 x body mass index (kg/m2, unrounded).',
  lowerLimitRule: null,
  citation: readInReviewTable(
    'jenkins-2009',
    'Jenkins S and others 2009, Physiother Theory Pract 25:516-522 (abstract read; volume, pages and DOI from memory)',
    '10.3109/09593980802664711',
  ),
  cautions: [
    'A fit sample: men 682 m (SD 73), women 643 m (SD 70), so predictions are high.',
    'R2 0.40 for men and 0.43 for women by the abstract; the review table leaves it blank.',
    'Weight is asked for both sexes although the equation for men does not use it.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    if (sexAtBirth === 'male') {
      return { predicted: 867 - 5.71 * ageYears + 1.03 * heightCm, lowerLimit: null };
    }
    const index = bodyMassIndex({ heightCm, weightKg });
    return { predicted: 525 - 2.86 * ageYears + 2.71 * heightCm - 6.22 * index, lowerLimit: null };
  },
};
