// Source: Enright PL, Sherrill DL 1998, Am J Respir Crit Care Med 158:1384-1387, equations for men and for women.
// Lower limits: 153 m (men), 139 m (women), quoted on a page of a professional association.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { ENRIGHT_SHERRILL_1998 } from '../../src/domain/prediction/equations/enright-sherrill-1998.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('six-minute walk distance, Enright and Sherrill 1998', () => {
  it.each([
    // -309 + 7.57 x 178 - 5.02 x 45 - 1.76 x 83
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 666.48,
      lowerLimit: 513.48,
      isBeyondAges: false,
    },
    // -309 + 7.57 x 174 - 5.02 x 60 - 1.76 x 82
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 562.66,
      lowerLimit: 409.66,
      isBeyondAges: false,
    },
    // -309 + 7.57 x 171 - 5.02 x 72 - 1.76 x 76
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 490.27,
      lowerLimit: 337.27,
      isBeyondAges: false,
    },
    // 667 + 2.11 x 164 - 5.78 x 45 - 2.29 x 66
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 601.8,
      lowerLimit: 462.8,
      isBeyondAges: false,
    },
    // 667 + 2.11 x 162 - 5.78 x 60 - 2.29 x 68
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 506.3,
      lowerLimit: 367.3,
      isBeyondAges: false,
    },
    // 667 + 2.11 x 159 - 5.78 x 72 - 2.29 x 63
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 442.06,
      lowerLimit: 303.06,
      isBeyondAges: false,
    },
    // -309 + 7.57 x 175 - 5.02 x 40 - 1.76 x 80
    {
      sexAtBirth: 'male',
      ageYears: 40,
      heightCm: 175,
      weightKg: 80,
      expected: 674.15,
      lowerLimit: 521.15,
      isBeyondAges: false,
    },
    // 667 + 2.11 x 160 - 5.78 x 40 - 2.29 x 62
    {
      sexAtBirth: 'female',
      ageYears: 40,
      heightCm: 160,
      weightKg: 62,
      expected: 631.42,
      lowerLimit: 492.42,
      isBeyondAges: false,
    },
    // -309 + 7.57 x 168 - 5.02 x 80 - 1.76 x 70
    {
      sexAtBirth: 'male',
      ageYears: 80,
      heightCm: 168,
      weightKg: 70,
      expected: 437.96,
      lowerLimit: 284.96,
      isBeyondAges: false,
    },
    // 667 + 2.11 x 154 - 5.78 x 80 - 2.29 x 55
    {
      sexAtBirth: 'female',
      ageYears: 80,
      heightCm: 154,
      weightKg: 55,
      expected: 403.59,
      lowerLimit: 264.59,
      isBeyondAges: false,
    },
    // -309 + 7.57 x 169.5 - 5.02 x 41 - 1.76 x 71.4
    {
      sexAtBirth: 'male',
      ageYears: 41,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 642.631,
      lowerLimit: 489.631,
      isBeyondAges: false,
    },
    // -309 + 7.57 x 168 - 5.02 x 81 - 1.76 x 70
    {
      sexAtBirth: 'male',
      ageYears: 81,
      heightCm: 168,
      weightKg: 70,
      expected: 432.94,
      lowerLimit: 279.94,
      isBeyondAges: true,
    },
    // 667 + 2.11 x 154 - 5.78 x 81 - 2.29 x 55
    {
      sexAtBirth: 'female',
      ageYears: 81,
      heightCm: 154,
      weightKg: 55,
      expected: 397.81,
      lowerLimit: 258.81,
      isBeyondAges: true,
    },
    // 667 + 2.11 x 160 - 5.78 x 39 - 2.29 x 62
    {
      sexAtBirth: 'female',
      ageYears: 39,
      heightCm: 160,
      weightKg: 62,
      expected: 637.2,
      lowerLimit: 498.2,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(ENRIGHT_SHERRILL_1998, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -50.2,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 75.7,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -17.6,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -57.8,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 21.1,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -22.9,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(ENRIGHT_SHERRILL_1998, from, to)).toBeCloseTo(expected, 9);
  });
});
