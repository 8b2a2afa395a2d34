// Source: Itaki M and others 2018, Respir Investig 56:497-502, abstract.
// The ages studied were not seen: every age is marked.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { ITAKI_2018 } from '../../src/domain/prediction/equations/itaki-2018.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('incremental shuttle walk distance, Itaki 2018', () => {
  it.each([
    // -4.894 - 4.107 x 45 + 131.115 + 4.895 x 178
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      expected: 812.716,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 60 + 131.115 + 4.895 x 174
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      expected: 731.531,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 72 + 131.115 + 4.895 x 171
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      expected: 667.562,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 45 + 4.895 x 164
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      expected: 613.071,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 60 + 4.895 x 162
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      expected: 541.676,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 72 + 4.895 x 159
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      expected: 477.707,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 18 + 131.115 + 4.895 x 175
    {
      sexAtBirth: 'male',
      ageYears: 18,
      heightCm: 175,
      expected: 908.92,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 18 + 4.895 x 160
    {
      sexAtBirth: 'female',
      ageYears: 18,
      heightCm: 160,
      expected: 704.38,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 90 + 131.115 + 4.895 x 168
    {
      sexAtBirth: 'male',
      ageYears: 90,
      heightCm: 168,
      expected: 578.951,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 90 + 4.895 x 154
    {
      sexAtBirth: 'female',
      ageYears: 90,
      heightCm: 154,
      expected: 379.306,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // -4.894 - 4.107 x 19 + 131.115 + 4.895 x 169.5
    {
      sexAtBirth: 'male',
      ageYears: 19,
      heightCm: 169.5,
      expected: 877.8905,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(ITAKI_2018, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170 },
      expected: -41.07,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180 },
      expected: 48.95,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170 },
      expected: -41.07,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180 },
      expected: 48.95,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170 },
      expected: 131.115,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(ITAKI_2018, from, to)).toBeCloseTo(expected, 9);
  });
});
