import type { PredictionEquation } from '../prediction-equation.js';

/** Six-minute walk distance of healthy adults at their first walk, by height, age and weight. */
export const ENRIGHT_SHERRILL_1998: PredictionEquation = {
  id: 'enright-sherrill-1998',
  title: 'Reference equations for the six-minute walk in healthy adults',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy adults, USA; first walk, without a practice walk',
  n: '290 (117 men, 173 women)',
  agesStudiedYears: { min: 40, max: 80, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    'Men: -309 + 7.57 x height (cm) - 5.02 x age (years) - 1.76 x weight (kg). ' +
    'Women: 667 + 2.11 x height (cm) - 5.78 x age (years) - 2.29 x weight (kg).',
  lowerLimitRule: {
    text: 'Predicted less 153 m (men) or 139 m (women): the 5th centile',
    citation: {
      id: 'enright-sherrill-1998-lower-limit',
      text: 'Enright PL, Sherrill DL 1998, as quoted with the form for body mass index on a page of a professional association',
      doi: null,
      status: 'retrieved-indirect',
    },
  },
  citation: {
    id: 'enright-sherrill-1998',
    text: 'Enright PL, Sherrill DL 1998, Am J Respir Crit Care Med 158:1384-1387 (abstract read; DOI from memory)',
    doi: '10.1164/ajrccm.158.5.9710086',
    status: 'retrieved',
  },
  cautions: [
    'First walk only: predicts less than equations built on the best of several walks.',
    'Men: 7.57 m for each centimetre, so a height wrong by 10 cm moves the prediction by 76 m.',
    'Below the lower limit of normal and below a fixed share of predicted are different findings.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    if (sexAtBirth === 'male') {
      const predicted = -309 + 7.57 * heightCm - 5.02 * ageYears - 1.76 * weightKg;
      return { predicted, lowerLimit: predicted - 153 };
    }
    const predicted = 667 + 2.11 * heightCm - 5.78 * ageYears - 2.29 * weightKg;
    return { predicted, lowerLimit: predicted - 139 };
  },
};
