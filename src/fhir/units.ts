import type { Unit } from '../domain/measures/measure.js';

/** A unit as it is printed, and its code of UCUM. */
export interface FhirUnit {
  readonly unit: string;
  readonly code: string;
}

/** Units of measures. @source UCUM; annotations in braces stand for numbers without a unit */
export const MEASURE_UNITS: Readonly<Record<Unit, FhirUnit>> = {
  m: { unit: 'm', code: 'm' },
  s: { unit: 's', code: 's' },
  repetitions: { unit: 'repetitions', code: '{repetitions}' },
  'm/s': { unit: 'm/s', code: 'm/s' },
  points: { unit: 'points', code: '{points}' },
  'mean item score': { unit: 'mean item score', code: '{score}' },
  grade: { unit: 'grade', code: '{grade}' },
  utility: { unit: 'utility', code: '1' },
  kg: { unit: 'kg', code: 'kg' },
  kgf: { unit: 'kgf', code: 'kgf' },
  'N.m': { unit: 'N.m', code: 'N.m' },
};

/** Units of what is measured beside the tests. */
export const UNITS = {
  percent: { unit: '%', code: '%' },
  perMinute: { unit: '/min', code: '/min' },
  litres: { unit: 'L', code: 'L' },
  litresPerMinute: { unit: 'L/min', code: 'L/min' },
  mmHg: { unit: 'mmHg', code: 'mm[Hg]' },
  metres: { unit: 'm', code: 'm' },
  centimetres: { unit: 'cm', code: 'cm' },
  kilograms: { unit: 'kg', code: 'kg' },
  seconds: { unit: 's', code: 's' },
  borg: { unit: 'points', code: '{points}' },
} as const satisfies Readonly<Record<string, FhirUnit>>;
