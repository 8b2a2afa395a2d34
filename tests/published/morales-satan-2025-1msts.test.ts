// Source: Morales-Satan M and others 2025, Colombia Medica, abstract.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { MORALES_SATAN_2025_1MSTS } from '../../src/domain/prediction/equations/morales-satan-2025-1msts.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('one-minute sit-to-stand repetitions, Morales-Satan 2025', () => {
  it.each([
    // 19.833 - 0.168 x 45 + 0.204 x 178 - 0.122 x 83
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 38.459,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 19.833 - 0.168 x 60 + 0.204 x 174 - 0.122 x 82
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 35.245,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 19.833 - 0.168 x 72 + 0.204 x 171 - 0.122 x 76
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 33.349,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 27.845 - 0.198 x 45 + 0.145 x 164 - 0.094 x 66
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 36.511,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 27.845 - 0.198 x 60 + 0.145 x 162 - 0.094 x 68
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 33.063,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 27.845 - 0.198 x 72 + 0.145 x 159 - 0.094 x 63
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 30.722,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 19.833 - 0.168 x 18 + 0.204 x 175 - 0.122 x 80
    {
      sexAtBirth: 'male',
      ageYears: 18,
      heightCm: 175,
      weightKg: 80,
      expected: 42.749,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 27.845 - 0.198 x 18 + 0.145 x 160 - 0.094 x 62
    {
      sexAtBirth: 'female',
      ageYears: 18,
      heightCm: 160,
      weightKg: 62,
      expected: 41.653,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 19.833 - 0.168 x 80 + 0.204 x 168 - 0.122 x 70
    {
      sexAtBirth: 'male',
      ageYears: 80,
      heightCm: 168,
      weightKg: 70,
      expected: 32.125,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 27.845 - 0.198 x 80 + 0.145 x 154 - 0.094 x 55
    {
      sexAtBirth: 'female',
      ageYears: 80,
      heightCm: 154,
      weightKg: 55,
      expected: 29.165,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 19.833 - 0.168 x 19 + 0.204 x 169.5 - 0.122 x 71.4
    {
      sexAtBirth: 'male',
      ageYears: 19,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 42.5082,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 19.833 - 0.168 x 81 + 0.204 x 168 - 0.122 x 70
    {
      sexAtBirth: 'male',
      ageYears: 81,
      heightCm: 168,
      weightKg: 70,
      expected: 31.957,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 27.845 - 0.198 x 81 + 0.145 x 154 - 0.094 x 55
    {
      sexAtBirth: 'female',
      ageYears: 81,
      heightCm: 154,
      weightKg: 55,
      expected: 28.967,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected repetitions', (worked) => {
    expectWorked(MORALES_SATAN_2025_1MSTS, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -1.68,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 2.04,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -1.22,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -1.98,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 1.45,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -0.94,
    },
  ] as const)('$name: $expected repetitions', ({ from, to, expected }) => {
    expect(difference(MORALES_SATAN_2025_1MSTS, from, to)).toBeCloseTo(expected, 9);
  });
});
