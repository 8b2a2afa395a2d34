import type { PredictionEquation } from '../prediction-equation.js';

/** One-minute sit-to-stand repetitions of healthy adults who live at high altitude. */
export const MORALES_SATAN_2025_1MSTS: PredictionEquation = {
  id: 'morales-satan-2025-1msts',
  title: 'One-minute sit-to-stand test reference values in people living at high altitudes',
  measureId: 'one-minute-sit-to-stand',
  population: 'Healthy adults at high altitude, Ecuador',
  n: '400 (58 % women)',
  agesStudiedYears: { min: 18, max: 80, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    'Repetitions. Men: 19.833 - 0.168 x age (years) + 0.204 x height (cm) - 0.122 x weight (kg). ' +
    'Women: 27.845 - 0.198 x age (years) + 0.145 x height (cm) - 0.094 x weight (kg).',
  lowerLimitRule: null,
  citation: {
    id: 'morales-satan-2025',
    text: 'Morales-Satan M and others 2025, Colombia Medica (abstract read)',
    doi: null,
    status: 'retrieved',
  },
  cautions: [
    'People living at high altitude: not a match for most services.',
    'The abstract prints a height of "1.62 cm"; only centimetres give sensible counts.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => ({
    predicted:
      sexAtBirth === 'male'
        ? 19.833 - 0.168 * ageYears + 0.204 * heightCm - 0.122 * weightKg
        : 27.845 - 0.198 * ageYears + 0.145 * heightCm - 0.094 * weightKg,
    lowerLimit: null,
  }),
};
