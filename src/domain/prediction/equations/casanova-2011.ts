import type { PredictionEquation } from '../prediction-equation.js';
import { readInReviewTable } from '../review-table.js';

/** Six-minute walk distance of healthy adults of seven countries, by age, size and how hard the heart worked. */
export const CASANOVA_2011: PredictionEquation = {
  id: 'casanova-2011',
  title: 'The 6-min walk distance in healthy subjects: reference standards from seven countries',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy adults, ten centres in seven countries (from memory)',
  n: '444 (238 men) (from memory)',
  agesStudiedYears: { min: 40, max: 80, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg', 'peakHeartRatePercent'],
  formula:
    '361 - 4 x age (years) + 2 x height (cm) + 3 x peak heart rate of the walk in percent of the predicted maximum ' +
    '(220 - age) - 1.5 x weight (kg); 30 less for women',
  lowerLimitRule: null,
  citation: readInReviewTable(
    'casanova-2011',
    'Casanova C and others 2011, Eur Respir J 37:150-156 (not read; DOI from memory)',
    '10.1183/09031936.00194909',
  ),
  cautions: [
    'The table prints the heart-rate term as HRmax/HRmax%pred. It is taken as a percentage, as the abstract of Poh 2006 ' +
      '(Respirology 11:211) says of the same notation; this paper itself was not reached.',
    'The predicted maximum of 220 less age is remembered for this paper.',
    'Not for people on beta-blockers, and not where the heart rate was not recorded.',
    'R2 ran from 0.09 to 0.73 across centres.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg, peakHeartRatePercent }) => {
    const constant = sexAtBirth === 'male' ? 361 : 331;
    const predicted = constant - 4 * ageYears + 2 * heightCm + 3 * peakHeartRatePercent - 1.5 * weightKg;
    return { predicted, lowerLimit: null };
  },
};
