// Source: Osses AR and others 2010, Rev Med Chil; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// Ages of the sample: from memory.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { OSSES_2010 } from '../../src/domain/prediction/equations/osses-2010.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('six-minute walk distance, Osses 2010', () => {
  it.each([
    // 530 - 3.31 x 45 + 2.36 x 178 - 1.49 x 83
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 677.46,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 530 - 3.31 x 60 + 2.36 x 174 - 1.49 x 82
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 619.86,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 530 - 3.31 x 72 + 2.36 x 171 - 1.49 x 76
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 582,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 457 - 3.46 x 45 + 2.61 x 164 - 1.57 x 66
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 625.72,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 457 - 3.46 x 60 + 2.61 x 162 - 1.57 x 68
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 565.46,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 457 - 3.46 x 72 + 2.61 x 159 - 1.57 x 63
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 523.96,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 530 - 3.31 x 20 + 2.36 x 175 - 1.49 x 80
    {
      sexAtBirth: 'male',
      ageYears: 20,
      heightCm: 175,
      weightKg: 80,
      expected: 757.6,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 457 - 3.46 x 20 + 2.61 x 160 - 1.57 x 62
    {
      sexAtBirth: 'female',
      ageYears: 20,
      heightCm: 160,
      weightKg: 62,
      expected: 708.06,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 530 - 3.31 x 80 + 2.36 x 168 - 1.49 x 70
    {
      sexAtBirth: 'male',
      ageYears: 80,
      heightCm: 168,
      weightKg: 70,
      expected: 557.38,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 457 - 3.46 x 80 + 2.61 x 154 - 1.57 x 55
    {
      sexAtBirth: 'female',
      ageYears: 80,
      heightCm: 154,
      weightKg: 55,
      expected: 495.79,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 530 - 3.31 x 21 + 2.36 x 169.5 - 1.49 x 71.4
    {
      sexAtBirth: 'male',
      ageYears: 21,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 754.124,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 530 - 3.31 x 81 + 2.36 x 168 - 1.49 x 70
    {
      sexAtBirth: 'male',
      ageYears: 81,
      heightCm: 168,
      weightKg: 70,
      expected: 554.07,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 457 - 3.46 x 81 + 2.61 x 154 - 1.57 x 55
    {
      sexAtBirth: 'female',
      ageYears: 81,
      heightCm: 154,
      weightKg: 55,
      expected: 492.33,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 457 - 3.46 x 19 + 2.61 x 160 - 1.57 x 62
    {
      sexAtBirth: 'female',
      ageYears: 19,
      heightCm: 160,
      weightKg: 62,
      expected: 711.52,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(OSSES_2010, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -33.1,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 23.6,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -14.9,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -34.6,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 26.1,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -15.7,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(OSSES_2010, from, to)).toBeCloseTo(expected, 9);
  });
});
