import type { PredictionEquation } from '../prediction-equation.js';

/** Six-minute walk distance of a general population sample in Italy, by age, size and physical activity. */
export const CAZZOLETTI_2022: PredictionEquation = {
  id: 'cazzoletti-2022',
  title: 'Six-minute walk distance in healthy subjects: reference standards from a general population sample',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy people of a general population sample, Italy',
  n: '530 (287 women, 243 men)',
  agesStudiedYears: { min: 21, max: 78, status: 'retrieved' },
  agesStudiedWomenYears: { min: 21, max: 76, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg', 'isActive'],
  formula:
    'Women: 222.55 + 8.10 x age (years) + 1.61 x height (cm) - 0.99 x weight (kg) + 22.58 x active - 0.10 x age squared. ' +
    'Men: -890.18 + 26.80 x age + 8.46 x height - 0.45 x weight - 2.54 x active - 0.06 x age squared - 0.13 x age x height. ' +
    'Active is 1 for exercise two or three times a week or more and about one hour a week or more, otherwise 0.',
  lowerLimitRule: {
    text: 'Predicted less 122 m (men) or 96 m (women): 1.645 times the residual standard deviation',
    citation: {
      id: 'cazzoletti-2022-lower-limit',
      text: 'Cazzoletti L and others 2022, Respir Res, Table 5 (first author from memory)',
      doi: '10.1186/s12931-022-02003-y',
      status: 'retrieved',
    },
  },
  citation: {
    id: 'cazzoletti-2022',
    text: 'Cazzoletti L and others 2022, Respir Res, abstract and Table 5 (first author from memory)',
    doi: '10.1186/s12931-022-02003-y',
    status: 'retrieved',
  },
  cautions: [
    'Approximate: coefficients of age squared and age x height are printed to two decimals, which alone can move the ' +
      'result by 10 to 40 m.',
    'Women 21 to 76 years, men 21 to 78 years.',
    'R2 is low: 0.159 for men, 0.238 for women.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg, isActive }) => {
    const active = isActive ? 1 : 0;
    const ageSquared = ageYears * ageYears;
    if (sexAtBirth === 'male') {
      const linear = -890.18 + 26.8 * ageYears + 8.46 * heightCm - 0.45 * weightKg - 2.54 * active;
      const predicted = linear - 0.06 * ageSquared - 0.13 * ageYears * heightCm;
      return { predicted, lowerLimit: predicted - 122 };
    }
    const linear = 222.55 + 8.1 * ageYears + 1.61 * heightCm - 0.99 * weightKg + 22.58 * active;
    const predicted = linear - 0.1 * ageSquared;
    return { predicted, lowerLimit: predicted - 96 };
  },
};
