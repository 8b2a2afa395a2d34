// Source: Jurgensen SP and others 2011, Respiration 81:223-228 (coefficients from memory; group means from the abstract).
// Ages of the sample: from memory.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { JURGENSEN_2011 } from '../../src/domain/prediction/equations/jurgensen-2011.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('incremental shuttle walk distance, Jurgensen 2011 (coefficients from memory)', () => {
  it.each([
    // 374.004 - 6.782 x 45 - 2.328 x 83 + 3.865 x 178 + 115.937
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 679.497,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 60 - 2.328 x 82 + 3.865 x 174 + 115.937
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 564.635,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 72 - 2.328 x 76 + 3.865 x 171 + 115.937
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 485.624,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 45 - 2.328 x 66 + 3.865 x 164
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 549.026,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 60 - 2.328 x 68 + 3.865 x 162
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 434.91,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 72 - 2.328 x 63 + 3.865 x 159
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 353.571,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 40 - 2.328 x 80 + 3.865 x 175 + 115.937
    {
      sexAtBirth: 'male',
      ageYears: 40,
      heightCm: 175,
      weightKg: 80,
      expected: 708.796,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 40 - 2.328 x 62 + 3.865 x 160
    {
      sexAtBirth: 'female',
      ageYears: 40,
      heightCm: 160,
      weightKg: 62,
      expected: 576.788,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 84 - 2.328 x 70 + 3.865 x 168 + 115.937
    {
      sexAtBirth: 'male',
      ageYears: 84,
      heightCm: 168,
      weightKg: 70,
      expected: 406.613,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 84 - 2.328 x 55 + 3.865 x 154
    {
      sexAtBirth: 'female',
      ageYears: 84,
      heightCm: 154,
      weightKg: 55,
      expected: 271.486,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 41 - 2.328 x 71.4 + 3.865 x 169.5 + 115.937
    {
      sexAtBirth: 'male',
      ageYears: 41,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 700.7773,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 374.004 - 6.782 x 85 - 2.328 x 70 + 3.865 x 168 + 115.937
    {
      sexAtBirth: 'male',
      ageYears: 85,
      heightCm: 168,
      weightKg: 70,
      expected: 399.831,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 374.004 - 6.782 x 85 - 2.328 x 55 + 3.865 x 154
    {
      sexAtBirth: 'female',
      ageYears: 85,
      heightCm: 154,
      weightKg: 55,
      expected: 264.704,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 374.004 - 6.782 x 39 - 2.328 x 62 + 3.865 x 160
    {
      sexAtBirth: 'female',
      ageYears: 39,
      heightCm: 160,
      weightKg: 62,
      expected: 583.57,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(JURGENSEN_2011, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -67.82,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 38.65,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -23.28,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -67.82,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 38.65,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: -23.28,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      expected: 115.937,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(JURGENSEN_2011, from, to)).toBeCloseTo(expected, 9);
  });

  // Abstract (read): mean age 59; men 606 m (SD 167), women 443 m (SD 117). Plausibility only: sizes are not printed, so
  // 59 years with 170 cm and 75 kg (men), 157 cm and 66 kg (women) are taken; tolerance half a standard deviation.
  it('lies near the printed group means at the mean age', () => {
    const man = { sexAtBirth: 'male', ageYears: 59, heightCm: 170, weightKg: 75 } as const;
    const woman = { sexAtBirth: 'female', ageYears: 59, heightCm: 157, weightKg: 66 } as const;
    expect(Math.abs(predictedFor(JURGENSEN_2011, man).predicted - 606)).toBeLessThan(83.5);
    expect(Math.abs(predictedFor(JURGENSEN_2011, woman).predicted - 443)).toBeLessThan(58.5);
  });
});
