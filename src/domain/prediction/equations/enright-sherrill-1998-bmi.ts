import { bodyMassIndex } from '../body-mass-index.js';
import type { PredictionEquation } from '../prediction-equation.js';

/** Six-minute walk distance of healthy adults at their first walk: the paper's other form, by body mass index. */
export const ENRIGHT_SHERRILL_1998_BMI: PredictionEquation = {
  id: 'enright-sherrill-1998-bmi',
  title: 'Reference equations for the six-minute walk in healthy adults (form with body mass index)',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy adults, USA; first walk, without a practice walk',
  n: '290 (117 men, 173 women)',
  agesStudiedYears: { min: 40, max: 80, status: 'retrieved' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    'Men: 1140 - 5.61 x body mass index (kg/m2, unrounded) - 6.94 x age (years). ' +
    'Women: 1017 - 6.24 x body mass index - 5.83 x age.',
  lowerLimitRule: {
    text: 'Predicted less 153 m (men) or 139 m (women): the 5th centile',
    citation: {
      id: 'enright-sherrill-1998-bmi-lower-limit',
      text: 'Enright PL, Sherrill DL 1998, as quoted with this form on a page of a professional association',
      doi: null,
      status: 'retrieved-indirect',
    },
  },
  citation: {
    id: 'enright-sherrill-1998-bmi',
    text:
      'Enright PL, Sherrill DL 1998, Am J Respir Crit Care Med 158:1384-1387 (DOI from memory); this form as quoted ' +
      'on a page of a professional association, its first terms also in Singh SJ and others 2014, Eur Respir J 44:1447, Table 5',
    doi: '10.1164/ajrccm.158.5.9710086',
    status: 'retrieved-indirect',
  },
  cautions: [
    'The review table prints the constant for men as 1.140; it is 1140, a thousands mark read as a decimal point.',
    'The page that quotes this form writes the constant of the lower limit into the prediction; they are two results.',
    'First walk only: predicts less than equations built on the best of several walks.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const index = bodyMassIndex({ heightCm, weightKg });
    if (sexAtBirth === 'male') {
      const predicted = 1140 - 5.61 * index - 6.94 * ageYears;
      return { predicted, lowerLimit: predicted - 153 };
    }
    const predicted = 1017 - 6.24 * index - 5.83 * ageYears;
    return { predicted, lowerLimit: predicted - 139 };
  },
};
