// Source: Camarri B and others 2006, Respir Med 100:658-665; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { CAMARRI_2006 } from '../../src/domain/prediction/equations/camarri-2006.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('six-minute walk distance, Camarri 2006', () => {
  it.each([
    // 216.9 + 4.12 x 176 - 1.75 x 57 - 1.15 x 84
    {
      sexAtBirth: 'male',
      ageYears: 57,
      heightCm: 176,
      weightKg: 84,
      expected: 745.67,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 172 - 1.75 x 65 - 1.15 x 80
    {
      sexAtBirth: 'male',
      ageYears: 65,
      heightCm: 172,
      weightKg: 80,
      expected: 719.79,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 170 - 1.75 x 74 - 1.15 x 76
    {
      sexAtBirth: 'male',
      ageYears: 74,
      heightCm: 170,
      weightKg: 76,
      expected: 700.4,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 163 - 1.75 x 57 - 1.15 x 70 - 34.04
    {
      sexAtBirth: 'female',
      ageYears: 57,
      heightCm: 163,
      weightKg: 70,
      expected: 674.17,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 160 - 1.75 x 65 - 1.15 x 68 - 34.04
    {
      sexAtBirth: 'female',
      ageYears: 65,
      heightCm: 160,
      weightKg: 68,
      expected: 650.11,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 158 - 1.75 x 74 - 1.15 x 62 - 34.04
    {
      sexAtBirth: 'female',
      ageYears: 74,
      heightCm: 158,
      weightKg: 62,
      expected: 633.02,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 175 - 1.75 x 55 - 1.15 x 80
    {
      sexAtBirth: 'male',
      ageYears: 55,
      heightCm: 175,
      weightKg: 80,
      expected: 749.65,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 160 - 1.75 x 55 - 1.15 x 62 - 34.04
    {
      sexAtBirth: 'female',
      ageYears: 55,
      heightCm: 160,
      weightKg: 62,
      expected: 674.51,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 168 - 1.75 x 75 - 1.15 x 70
    {
      sexAtBirth: 'male',
      ageYears: 75,
      heightCm: 168,
      weightKg: 70,
      expected: 697.31,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 154 - 1.75 x 75 - 1.15 x 55 - 34.04
    {
      sexAtBirth: 'female',
      ageYears: 75,
      heightCm: 154,
      weightKg: 55,
      expected: 622.84,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 169.5 - 1.75 x 56 - 1.15 x 71.4
    {
      sexAtBirth: 'male',
      ageYears: 56,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 735.13,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 216.9 + 4.12 x 168 - 1.75 x 76 - 1.15 x 70
    {
      sexAtBirth: 'male',
      ageYears: 76,
      heightCm: 168,
      weightKg: 70,
      expected: 695.56,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 216.9 + 4.12 x 154 - 1.75 x 76 - 1.15 x 55 - 34.04
    {
      sexAtBirth: 'female',
      ageYears: 76,
      heightCm: 154,
      weightKg: 55,
      expected: 621.09,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 216.9 + 4.12 x 160 - 1.75 x 54 - 1.15 x 62 - 34.04
    {
      sexAtBirth: 'female',
      ageYears: 54,
      heightCm: 160,
      weightKg: 62,
      expected: 676.26,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(CAMARRI_2006, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -17.5,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 41.2,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -11.5,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -17.5,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 41.2,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -11.5,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      expected: 34.04,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(CAMARRI_2006, from, to)).toBeCloseTo(expected, 9);
  });
});
