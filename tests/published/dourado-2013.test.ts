// Source: Dourado VZ and others 2013, J Bras Pneumol 39:190-197 (coefficients from memory, low confidence).
// The oldest age was not seen: every age is marked.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { DOURADO_2013 } from '../../src/domain/prediction/equations/dourado-2013.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('incremental shuttle walk distance, Dourado 2013 (coefficients from memory)', () => {
  it.each([
    // 347.7 - 7.2 x 45 - 3 x 83 + 472.3 x 1.78 + 137.2
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 752.594,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 60 - 3 x 82 + 472.3 x 1.74 + 137.2
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 628.702,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 72 - 3 x 76 + 472.3 x 1.71 + 137.2
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 546.133,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 45 - 3 x 66 + 472.3 x 1.64
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 600.272,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 60 - 3 x 68 + 472.3 x 1.62
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 476.826,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 72 - 3 x 63 + 472.3 x 1.59
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 391.257,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 40 - 3 x 80 + 472.3 x 1.75 + 137.2
    {
      sexAtBirth: 'male',
      ageYears: 40,
      heightCm: 175,
      weightKg: 80,
      expected: 783.425,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 40 - 3 x 62 + 472.3 x 1.6
    {
      sexAtBirth: 'female',
      ageYears: 40,
      heightCm: 160,
      weightKg: 62,
      expected: 629.38,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 90 - 3 x 70 + 472.3 x 1.68 + 137.2
    {
      sexAtBirth: 'male',
      ageYears: 90,
      heightCm: 168,
      weightKg: 70,
      expected: 420.364,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 90 - 3 x 55 + 472.3 x 1.54
    {
      sexAtBirth: 'female',
      ageYears: 90,
      heightCm: 154,
      weightKg: 55,
      expected: 262.042,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 41 - 3 x 71.4 + 472.3 x 1.695 + 137.2
    {
      sexAtBirth: 'male',
      ageYears: 41,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 776.0485,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 347.7 - 7.2 x 39 - 3 x 62 + 472.3 x 1.6
    {
      sexAtBirth: 'female',
      ageYears: 39,
      heightCm: 160,
      weightKg: 62,
      expected: 636.58,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(DOURADO_2013, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -72,
    },
    {
      name: '10 cm, 0.1 m in the equation, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 47.23,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -30,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -72,
    },
    {
      name: '10 cm, 0.1 m in the equation, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 47.23,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -30,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      expected: 137.2,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(DOURADO_2013, from, to)).toBeCloseTo(expected, 9);
  });
});
