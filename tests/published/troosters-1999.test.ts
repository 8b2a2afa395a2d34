// Source: Troosters T and others 1999, Eur Respir J 14:270-274; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// Lower limit of 92 m: from memory (1.645 x 56 m = 92.1 m).
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { TROOSTERS_1999 } from '../../src/domain/prediction/equations/troosters-1999.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('six-minute walk distance, Troosters 1999', () => {
  it.each([
    // 218 + 5.14 x 178 - 5.32 x 45 - 1.8 x 83 + 51.31
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 795.43,
      lowerLimit: 703.43,
      isBeyondAges: true,
    },
    // 218 + 5.14 x 174 - 5.32 x 60 - 1.8 x 82 + 51.31
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 696.87,
      lowerLimit: 604.87,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 171 - 5.32 x 72 - 1.8 x 76 + 51.31
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 628.41,
      lowerLimit: 536.41,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 164 - 5.32 x 45 - 1.8 x 66
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 702.76,
      lowerLimit: 610.76,
      isBeyondAges: true,
    },
    // 218 + 5.14 x 162 - 5.32 x 60 - 1.8 x 68
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 609.08,
      lowerLimit: 517.08,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 159 - 5.32 x 72 - 1.8 x 63
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 538.82,
      lowerLimit: 446.82,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 175 - 5.32 x 50 - 1.8 x 80 + 51.31
    {
      sexAtBirth: 'male',
      ageYears: 50,
      heightCm: 175,
      weightKg: 80,
      expected: 758.81,
      lowerLimit: 666.81,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 160 - 5.32 x 50 - 1.8 x 62
    {
      sexAtBirth: 'female',
      ageYears: 50,
      heightCm: 160,
      weightKg: 62,
      expected: 662.8,
      lowerLimit: 570.8,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 168 - 5.32 x 85 - 1.8 x 70 + 51.31
    {
      sexAtBirth: 'male',
      ageYears: 85,
      heightCm: 168,
      weightKg: 70,
      expected: 554.63,
      lowerLimit: 462.63,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 154 - 5.32 x 85 - 1.8 x 55
    {
      sexAtBirth: 'female',
      ageYears: 85,
      heightCm: 154,
      weightKg: 55,
      expected: 458.36,
      lowerLimit: 366.36,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 169.5 - 5.32 x 51 - 1.8 x 71.4 + 51.31
    {
      sexAtBirth: 'male',
      ageYears: 51,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 740.7,
      lowerLimit: 648.7,
      isBeyondAges: false,
    },
    // 218 + 5.14 x 168 - 5.32 x 86 - 1.8 x 70 + 51.31
    {
      sexAtBirth: 'male',
      ageYears: 86,
      heightCm: 168,
      weightKg: 70,
      expected: 549.31,
      lowerLimit: 457.31,
      isBeyondAges: true,
    },
    // 218 + 5.14 x 154 - 5.32 x 86 - 1.8 x 55
    {
      sexAtBirth: 'female',
      ageYears: 86,
      heightCm: 154,
      weightKg: 55,
      expected: 453.04,
      lowerLimit: 361.04,
      isBeyondAges: true,
    },
    // 218 + 5.14 x 160 - 5.32 x 49 - 1.8 x 62
    {
      sexAtBirth: 'female',
      ageYears: 49,
      heightCm: 160,
      weightKg: 62,
      expected: 668.12,
      lowerLimit: 576.12,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(TROOSTERS_1999, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -53.2,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 51.4,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -18,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -53.2,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 51.4,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -18,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      expected: 51.31,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(TROOSTERS_1999, from, to)).toBeCloseTo(expected, 9);
  });

  // Residual standard deviation from what was read: 93 m x sqrt(1 - 0.66) = 54.2 m; remembered: 56 m, 1.645 x 56 = 92.12.
  it('takes off a lower limit that fits the printed scatter within 3 m', () => {
    const { predicted, lowerLimit } = predictedFor(TROOSTERS_1999, {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
    });
    const fromScatterM = 1.645 * 93 * Math.sqrt(1 - 0.66);
    expect(Math.abs(predicted - (lowerLimit ?? Number.NaN) - fromScatterM)).toBeLessThan(3);
    expect(TROOSTERS_1999.lowerLimitRule?.citation.status).toBe('value-from-memory');
  });
});
