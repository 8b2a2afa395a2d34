import type { PredictionEquation } from '../prediction-equation.js';

/** Six-minute walk distance of healthy Brazilians by age and sex alone. */
export const IWAMA_2009: PredictionEquation = {
  id: 'iwama-2009',
  title: 'The six-minute walk test and body weight-walk distance product in healthy Brazilian subjects',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy Brazilians; two walks on a 30 m course',
  n: '134 (61 men, 73 women); 85 more for validation',
  agesStudiedYears: { min: 13, max: 84, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears'],
  formula: '622.461 - 1.846 x age (years) + 61.503 x sex (male 1, female 0)',
  lowerLimitRule: null,
  citation: {
    id: 'iwama-2009',
    text: 'Iwama AM and others 2009, Braz J Med Biol Res 42:1080-1085 (abstract read)',
    doi: '10.1590/S0100-879X2009005000032',
    status: 'retrieved',
  },
  cautions: [
    'The sample is younger on average than people in rehabilitation.',
    'Validation group: measured less predicted -3 m (SD 68), 99.6 % (SD 11.9) of predicted.',
    'Height and weight are not used; R2 is 0.300.',
  ],
  predict: ({ sexAtBirth, ageYears }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    return { predicted: 622.461 - 1.846 * ageYears + 61.503 * male, lowerLimit: null };
  },
};
