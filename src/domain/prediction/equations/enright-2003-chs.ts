import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of older people of the Cardiovascular Health Study. */
export const ENRIGHT_2003_CHS: PredictionEquation = {
  id: 'enright-2003-chs',
  title: 'The 6-min walk test: a quick measure of functional status in elderly adults',
  measureId: 'six-minute-walk-distance',
  population: 'People over 68 years living at home, USA, Cardiovascular Health Study',
  n: '2281 walked; the equation comes from its healthy part (752, from memory)',
  agesStudiedYears: { min: 68, max: null, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    'Men: 510 + 2.2 x height (cm) - 0.93 x weight (kg) - 5.3 x age (years). ' +
    'Women: 493 + 2.2 x height (cm) - 0.93 x weight (kg) - 5.3 x age (years).',
  lowerLimitRule: {
    text: 'Predicted less 100 m',
    citation: {
      id: 'enright-2003-chs-lower-limit',
      text: 'Enright PL and others 2003, as remembered with low confidence',
      doi: null,
      status: 'value-from-memory',
    },
  },
  citation: readInReviewTable(
    'enright-2003-chs',
    'Enright PL and others 2003, Chest 123:387-398 (abstract read, it prints no coefficients; DOI from memory)',
    '10.1378/chest.123.2.387',
  ),
  cautions: [
    'For people over 68 only; the oldest age studied was not seen, so every age is marked.',
    'The whole cohort walked 344 m (SD 88), far below other papers, so percentages come out much higher.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const constant = sexAtBirth === 'male' ? 510 : 493;
    const predicted = constant + 2.2 * heightCm - 0.93 * weightKg - 5.3 * ageYears;
    return { predicted, lowerLimit: predicted - 100 };
  },
};
