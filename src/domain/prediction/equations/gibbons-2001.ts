import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of healthy adults, best of four walks, by age and sex alone. */
export const GIBBONS_2001: PredictionEquation = {
  id: 'gibbons-2001',
  title:
    'Reference values for a multiple repetition 6-minute walk test in healthy adults older than 20 years',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy adults, Canada; best of four walks on a 20 m course (all from memory)',
  n: '79 (from memory)',
  agesStudiedYears: { min: 20, max: 80, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears'],
  formula: '868.8 - 2.99 x age (years) - 74.7 x sex (male 0, female 1)',
  lowerLimitRule: null,
  citation: readInReviewTable(
    'gibbons-2001',
    'Gibbons WJ and others 2001, J Cardiopulm Rehabil 21:87-93 (not read; DOI from memory)',
    '10.1097/00008483-200103000-00005',
  ),
  cautions: [
    'Best of four walks: reads high against a single walk.',
    'Height and weight are not used.',
    'The coding of sex is inferred: men walk further than women.',
  ],
  predict: ({ sexAtBirth, ageYears }) => {
    const female = sexAtBirth === 'female' ? 1 : 0;
    return { predicted: 868.8 - 2.99 * ageYears - 74.7 * female, lowerLimit: null };
  },
};
