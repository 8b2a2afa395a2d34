import { bodyMassIndex } from '../body-mass-index.js';
import type { PredictionEquation } from '../prediction-equation.js';

/** Six-minute walk distance of healthy Brazilians by age, sex and body mass index; the form without heart rate. */
export const BRITTO_2013_BMI: PredictionEquation = {
  id: 'britto-2013-bmi',
  title: 'Reference equations for the six-minute walk distance based on a Brazilian multicenter study',
  measureId: 'six-minute-walk-distance',
  population: 'Healthy Brazilians of several regions; two walks',
  n: '617',
  agesStudiedYears: { min: 18, max: null, status: 'value-from-memory' },
  needs: ['sexAtBirth', 'ageYears', 'heightCm', 'weightKg'],
  formula:
    '890.46 - 6.11 x age (years) + 0.0345 x age squared + 48.87 x sex (male 1, female 0) ' +
    '- 4.87 x body mass index (kg/m2, unrounded)',
  lowerLimitRule: null,
  citation: {
    id: 'britto-2013',
    text: 'Britto RR and others 2013, Braz J Phys Ther 17:556-563 (abstract read; volume and pages from memory)',
    doi: '10.1590/S1413-35552012005000122',
    status: 'retrieved',
  },
  cautions: [
    'Quadratic in age: turns upward after 88.6 years (6.11 / (2 x 0.0345)); not for use beyond the sample.',
    'The oldest age studied was not seen, so every age is marked.',
    'The coding of sex is inferred: men walked 54 m further.',
  ],
  predict: ({ sexAtBirth, ageYears, heightCm, weightKg }) => {
    const male = sexAtBirth === 'male' ? 1 : 0;
    const index = bodyMassIndex({ heightCm, weightKg });
    const predicted = 890.46 - 6.11 * ageYears + 0.0345 * ageYears * ageYears + 48.87 * male - 4.87 * index;
    return { predicted, lowerLimit: null };
  },
};
