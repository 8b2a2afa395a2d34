// Source: Dourado VZ and others 2011, J Bras Pneumol; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// Printed for height in metres. The oldest age was not seen: every age is marked.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { DOURADO_2011 } from '../../src/domain/prediction/equations/dourado-2011.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('six-minute walk distance, Dourado 2011', () => {
  it.each([
    // 299.296 - 2.728 x 45 - 2.16 x 83 + 361.731 x 1.78 + 56.386
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 697.5232,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 60 - 2.16 x 82 + 361.731 x 1.74 + 56.386
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 644.2939,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 72 - 2.16 x 76 + 361.731 x 1.71 + 56.386
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 613.666,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 45 - 2.16 x 66 + 361.731 x 1.64
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 627.2148,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 60 - 2.16 x 68 + 361.731 x 1.62
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 574.7402,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 72 - 2.16 x 63 + 361.731 x 1.59
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 541.9523,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 40 - 2.16 x 80 + 361.731 x 1.75 + 56.386
    {
      sexAtBirth: 'male',
      ageYears: 40,
      heightCm: 175,
      weightKg: 80,
      expected: 706.7912,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 40 - 2.16 x 62 + 361.731 x 1.6
    {
      sexAtBirth: 'female',
      ageYears: 40,
      heightCm: 160,
      weightKg: 62,
      expected: 635.0256,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 90 - 2.16 x 70 + 361.731 x 1.68 + 56.386
    {
      sexAtBirth: 'male',
      ageYears: 90,
      heightCm: 168,
      weightKg: 70,
      expected: 566.6701,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 90 - 2.16 x 55 + 361.731 x 1.54
    {
      sexAtBirth: 'female',
      ageYears: 90,
      heightCm: 154,
      weightKg: 55,
      expected: 492.0417,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 41 - 2.16 x 71.4 + 361.731 x 1.695 + 56.386
    {
      sexAtBirth: 'male',
      ageYears: 41,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 702.744,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 299.296 - 2.728 x 39 - 2.16 x 62 + 361.731 x 1.6
    {
      sexAtBirth: 'female',
      ageYears: 39,
      heightCm: 160,
      weightKg: 62,
      expected: 637.7536,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(DOURADO_2011, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -27.28,
    },
    {
      name: '10 cm, 0.1 m in the equation, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 36.1731,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -21.6,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -27.28,
    },
    {
      name: '10 cm, 0.1 m in the equation, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 36.1731,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -21.6,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      expected: 56.386,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(DOURADO_2011, from, to)).toBeCloseTo(expected, 9);
  });

  // Centimetres taken for metres would give 361.731 x 170 = 61494 m.
  it('takes the height in centimetres although the paper prints metres', () => {
    const person = { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 } as const;
    // 299.296 - 163.68 - 151.2 + 614.9427 = 599.3587
    expect(predictedFor(DOURADO_2011, person).predicted).toBeCloseTo(599.3587, 6);
  });
});
