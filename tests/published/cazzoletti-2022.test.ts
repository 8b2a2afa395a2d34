// Source: Cazzoletti L and others 2022, Respir Res, doi 10.1186/s12931-022-02003-y, abstract and Table 5.
// Women of 21 to 76 years, men of 21 to 78.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { CAZZOLETTI_2022 } from '../../src/domain/prediction/equations/cazzoletti-2022.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('six-minute walk distance, Cazzoletti 2022', () => {
  it.each([
    // -890.18 + 26.8 x 45 + 8.46 x 178 - 0.45 x 82 - 2.54 - 0.06 x 45 x 45 - 0.13 x 45 x 178
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 82,
      isActive: true,
      expected: 619.46,
      lowerLimit: 497.46,
      isBeyondAges: false,
    },
    // -890.18 + 26.8 x 60 + 8.46 x 175 - 0.45 x 80 - 0.06 x 60 x 60 - 0.13 x 60 x 175
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 175,
      weightKg: 80,
      isActive: false,
      expected: 581.32,
      lowerLimit: 459.32,
      isBeyondAges: false,
    },
    // -890.18 + 26.8 x 72 + 8.46 x 171 - 0.45 x 76 - 0.06 x 72 x 72 - 0.13 x 72 x 171
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      isActive: false,
      expected: 540.28,
      lowerLimit: 418.28,
      isBeyondAges: false,
    },
    // 222.55 + 8.1 x 45 + 1.61 x 164 - 0.99 x 66 + 22.58 - 0.1 x 45 x 45
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      isActive: true,
      expected: 605.83,
      lowerLimit: 509.83,
      isBeyondAges: false,
    },
    // 222.55 + 8.1 x 60 + 1.61 x 162 - 0.99 x 69 - 0.1 x 60 x 60
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 69,
      isActive: false,
      expected: 541.06,
      lowerLimit: 445.06,
      isBeyondAges: false,
    },
    // 222.55 + 8.1 x 72 + 1.61 x 159 - 0.99 x 63 - 0.1 x 72 x 72
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      isActive: false,
      expected: 480.97,
      lowerLimit: 384.97,
      isBeyondAges: false,
    },
    // -890.18 + 26.8 x 21 + 8.46 x 175 - 0.45 x 80 - 2.54 - 0.06 x 21 x 21 - 0.13 x 21 x 175
    {
      sexAtBirth: 'male',
      ageYears: 21,
      heightCm: 175,
      weightKg: 80,
      isActive: true,
      expected: 610.37,
      lowerLimit: 488.37,
      isBeyondAges: false,
    },
    // 222.55 + 8.1 x 21 + 1.61 x 160 - 0.99 x 62 - 0.1 x 21 x 21
    {
      sexAtBirth: 'female',
      ageYears: 21,
      heightCm: 160,
      weightKg: 62,
      isActive: false,
      expected: 544.77,
      lowerLimit: 448.77,
      isBeyondAges: false,
    },
    // -890.18 + 26.8 x 78 + 8.46 x 168 - 0.45 x 70 - 2.54 - 0.06 x 78 x 78 - 0.13 x 78 x 168
    {
      sexAtBirth: 'male',
      ageYears: 78,
      heightCm: 168,
      weightKg: 70,
      isActive: true,
      expected: 518.9,
      lowerLimit: 396.9,
      isBeyondAges: false,
    },
    // 222.55 + 8.1 x 76 + 1.61 x 154 - 0.99 x 55 + 22.58 - 0.1 x 76 x 76
    {
      sexAtBirth: 'female',
      ageYears: 76,
      heightCm: 154,
      weightKg: 55,
      isActive: true,
      expected: 476.62,
      lowerLimit: 380.62,
      isBeyondAges: false,
    },
    // -890.18 + 26.8 x 79 + 8.46 x 168 - 0.45 x 70 - 2.54 - 0.06 x 79 x 79 - 0.13 x 79 x 168
    {
      sexAtBirth: 'male',
      ageYears: 79,
      heightCm: 168,
      weightKg: 70,
      isActive: true,
      expected: 514.44,
      lowerLimit: 392.44,
      isBeyondAges: true,
    },
    // 222.55 + 8.1 x 77 + 1.61 x 154 - 0.99 x 55 + 22.58 - 0.1 x 77 x 77
    {
      sexAtBirth: 'female',
      ageYears: 77,
      heightCm: 154,
      weightKg: 55,
      isActive: true,
      expected: 469.42,
      lowerLimit: 373.42,
      isBeyondAges: true,
    },
    // 222.55 + 8.1 x 20 + 1.61 x 160 - 0.99 x 62 + 22.58 - 0.1 x 20 x 20
    {
      sexAtBirth: 'female',
      ageYears: 20,
      heightCm: 160,
      weightKg: 62,
      isActive: true,
      expected: 563.35,
      lowerLimit: 467.35,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(CAZZOLETTI_2022, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70, isActive: false },
      expected: -19,
    },
    {
      name: 'ten years from 60 to 70, men',
      from: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'male', ageYears: 70, heightCm: 170, weightKg: 70, isActive: false },
      expected: -31,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70, isActive: false },
      expected: 19.6,
    },
    {
      name: '10 cm at 60 years, men',
      from: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 180, weightKg: 70, isActive: false },
      expected: 6.6,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80, isActive: false },
      expected: -4.5,
    },
    {
      name: 'being active, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, isActive: true },
      expected: -2.54,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70, isActive: false },
      expected: -29,
    },
    {
      name: 'ten years from 60 to 70, women',
      from: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'female', ageYears: 70, heightCm: 170, weightKg: 70, isActive: false },
      expected: -49,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70, isActive: false },
      expected: 16.1,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80, isActive: false },
      expected: -9.9,
    },
    {
      name: 'being active, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, isActive: false },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, isActive: true },
      expected: 22.58,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(CAZZOLETTI_2022, from, to)).toBeCloseTo(expected, 9);
  });

  // Abstract: SD 80.1 m and R2 0.159 in men, 66.5 m and 0.238 in women. 1.645 x 80.1 x sqrt(1 - 0.159) = 120.8 m and
  // 1.645 x 66.5 x sqrt(1 - 0.238) = 95.5 m. Tolerance 2 m: residual standard deviations lose degrees of freedom.
  it.each([
    { sexAtBirth: 'male', limitM: 1.645 * 80.1 * Math.sqrt(1 - 0.159) },
    { sexAtBirth: 'female', limitM: 1.645 * 66.5 * Math.sqrt(1 - 0.238) },
  ] as const)(
    'takes off a lower limit that fits the scatter of the abstract, $sexAtBirth',
    ({ sexAtBirth, limitM }) => {
      const person = { sexAtBirth, ageYears: 50, heightCm: 170, weightKg: 70, isActive: true };
      const { predicted, lowerLimit } = predictedFor(CAZZOLETTI_2022, person);
      expect(Math.abs(predicted - (lowerLimit ?? Number.NaN) - limitM)).toBeLessThan(2);
    },
  );
});
