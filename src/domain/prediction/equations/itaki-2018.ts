import type { PredictionEquation } from '../prediction-equation.js';

/** Incremental shuttle walk distance of healthy Japanese adults by age, sex and height. */
export const ITAKI_2018: PredictionEquation = {
  id: 'itaki-2018',
  title: 'Reference equation for the incremental shuttle walk test in Japanese adults',
  measureId: 'incremental-shuttle-walk-distance',
  population: 'Healthy Japanese adults; two walks',
  n: '590 (237 men)',
  agesStudiedYears: { min: null, max: null, status: null },
  needs: ['sexAtBirth', 'ageYears', 'heightCm'],
  formula: '-4.894 - 4.107 x age (years) + 131.115 x sex (male 1, female 0) + 4.895 x height (cm)',
  lowerLimitRule: null,
  citation: {
    id: 'itaki-2018',
    text: 'Itaki M, Kozu R, Tanaka K, Senjyu H 2018, Respir Investig 56:497-502 (abstract read; DOI from memory)',
    doi: '10.1016/j.resinv.2018.08.003',
    status: 'retrieved',
  },
  cautions: [
    'The ages studied were not seen, so every age is marked.',
    'Median 640 m (interquartile range 490 to 793); R2 is 0.50.',
    'The abstract gives male as 1; female as 0 is implied.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    return { predicted: -4.894 - 4.107 * ageYears + 131.115 * male + 4.895 * heightCm, lowerLimit: null };
  },
};
