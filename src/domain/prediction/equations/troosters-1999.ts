import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of healthy older adults on a long course with much encouragement. */
export const TROOSTERS_1999: PredictionEquation = {
  id: 'troosters-1999',
  title: 'Six minute walking distance in healthy elderly subjects',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy volunteers, Leuven, Belgium; 50 m course, encouragement every 30 s',
  n: '51',
  agesStudiedYears: { min: 50, max: 85, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    '218 + 5.14 x height (cm) - 5.32 x age (years) - 1.80 x weight (kg) + 51.31 x sex (male 1, female 0)',
  lowerLimitRule: {
    text: 'Predicted less 92 m: 1.645 times a residual standard deviation of 56 m',
    citation: {
      id: 'troosters-1999-lower-limit',
      text: 'Residual standard deviation as remembered; standard deviation 93 m and R2 0.66 of the paper give 54.2 m',
      doi: null,
      status: 'value-from-memory',
    },
  },
  citation: readInReviewTable(
    'troosters-1999',
    'Troosters T, Gosselink R, Decramer M 1999, Eur Respir J 14:270-274 (abstract read, it prints no coefficients; DOI from memory)',
    '10.1034/j.1399-3003.1999.14b06.x',
  ),
  cautions: [
    'Long course and frequent encouragement: about 95 to 140 m more than Enright and Sherrill 1998 for the same person.',
    'Small sample.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    const predicted = 218 + 5.14 * heightCm - 5.32 * ageYears - 1.8 * weightKg + 51.31 * male;
    return { predicted, lowerLimit: predicted - 92 };
  },
};
