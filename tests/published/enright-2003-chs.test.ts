// Source: Enright PL and others 2003, Chest 123:387-398; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// Lower limit of 100 m: from memory. The oldest age was not seen: every age is marked.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { ENRIGHT_2003_CHS } from '../../src/domain/prediction/equations/enright-2003-chs.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('six-minute walk distance, Enright 2003', () => {
  it.each([
    // 510 + 2.2 x 172 - 0.93 x 78 - 5.3 x 70
    {
      sexAtBirth: 'male',
      ageYears: 70,
      heightCm: 172,
      weightKg: 78,
      expected: 444.86,
      lowerLimit: 344.86,
      isBeyondAges: true,
    },
    // 510 + 2.2 x 168 - 0.93 x 70 - 5.3 x 82
    {
      sexAtBirth: 'male',
      ageYears: 82,
      heightCm: 168,
      weightKg: 70,
      expected: 379.9,
      lowerLimit: 279.9,
      isBeyondAges: true,
    },
    // 493 + 2.2 x 159 - 0.93 x 63 - 5.3 x 72
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 402.61,
      lowerLimit: 302.61,
      isBeyondAges: true,
    },
    // 493 + 2.2 x 155 - 0.93 x 58 - 5.3 x 85
    {
      sexAtBirth: 'female',
      ageYears: 85,
      heightCm: 155,
      weightKg: 58,
      expected: 329.56,
      lowerLimit: 229.56,
      isBeyondAges: true,
    },
    // 510 + 2.2 x 175 - 0.93 x 80 - 5.3 x 68
    {
      sexAtBirth: 'male',
      ageYears: 68,
      heightCm: 175,
      weightKg: 80,
      expected: 460.2,
      lowerLimit: 360.2,
      isBeyondAges: true,
    },
    // 493 + 2.2 x 160 - 0.93 x 62 - 5.3 x 68
    {
      sexAtBirth: 'female',
      ageYears: 68,
      heightCm: 160,
      weightKg: 62,
      expected: 426.94,
      lowerLimit: 326.94,
      isBeyondAges: true,
    },
    // 510 + 2.2 x 168 - 0.93 x 70 - 5.3 x 90
    {
      sexAtBirth: 'male',
      ageYears: 90,
      heightCm: 168,
      weightKg: 70,
      expected: 337.5,
      lowerLimit: 237.5,
      isBeyondAges: true,
    },
    // 493 + 2.2 x 154 - 0.93 x 55 - 5.3 x 90
    {
      sexAtBirth: 'female',
      ageYears: 90,
      heightCm: 154,
      weightKg: 55,
      expected: 303.65,
      lowerLimit: 203.65,
      isBeyondAges: true,
    },
    // 510 + 2.2 x 169.5 - 0.93 x 71.4 - 5.3 x 69
    {
      sexAtBirth: 'male',
      ageYears: 69,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 450.798,
      lowerLimit: 350.798,
      isBeyondAges: true,
    },
    // 493 + 2.2 x 160 - 0.93 x 62 - 5.3 x 67
    {
      sexAtBirth: 'female',
      ageYears: 67,
      heightCm: 160,
      weightKg: 62,
      expected: 432.24,
      lowerLimit: 332.24,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(ENRIGHT_2003_CHS, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -53,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 22,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -9.3,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -53,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 22,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -9.3,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      expected: 17,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(ENRIGHT_2003_CHS, from, to)).toBeCloseTo(expected, 9);
  });
});
