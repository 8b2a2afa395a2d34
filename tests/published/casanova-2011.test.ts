// Source: Casanova C and others 2011, Eur Respir J 37:150-156; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// Heart rate in percent of 220 less age: inferred (see the cautions). Ages of the sample: from memory.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { CASANOVA_2011 } from '../../src/domain/prediction/equations/casanova-2011.js';
import { peakHeartRatePercent } from '../../src/domain/prediction/predict.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('six-minute walk distance, Casanova 2011', () => {
  it.each([
    // 361 - 4 x 45 + 2 x 178 + 3 x 75 - 1.5 x 82
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 82,
      peakHeartRatePercent: 75,
      expected: 639,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 361 - 4 x 72 + 2 x 171 + 3 x 80 - 1.5 x 76
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      peakHeartRatePercent: 80,
      expected: 541,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 331 - 4 x 45 + 2 x 164 + 3 x 75 - 1.5 x 66
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      peakHeartRatePercent: 75,
      expected: 605,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 331 - 4 x 72 + 2 x 159 + 3 x 80 - 1.5 x 63
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      peakHeartRatePercent: 80,
      expected: 506.5,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 361 - 4 x 40 + 2 x 175 + 3 x 78 - 1.5 x 80
    {
      sexAtBirth: 'male',
      ageYears: 40,
      heightCm: 175,
      weightKg: 80,
      peakHeartRatePercent: 78,
      expected: 665,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 331 - 4 x 40 + 2 x 160 + 3 x 78 - 1.5 x 62
    {
      sexAtBirth: 'female',
      ageYears: 40,
      heightCm: 160,
      weightKg: 62,
      peakHeartRatePercent: 78,
      expected: 632,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 361 - 4 x 80 + 2 x 168 + 3 x 82 - 1.5 x 70
    {
      sexAtBirth: 'male',
      ageYears: 80,
      heightCm: 168,
      weightKg: 70,
      peakHeartRatePercent: 82,
      expected: 518,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 331 - 4 x 80 + 2 x 154 + 3 x 82 - 1.5 x 55
    {
      sexAtBirth: 'female',
      ageYears: 80,
      heightCm: 154,
      weightKg: 55,
      peakHeartRatePercent: 82,
      expected: 482.5,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 361 - 4 x 41 + 2 x 169.5 + 3 x 80 - 1.5 x 71.4
    {
      sexAtBirth: 'male',
      ageYears: 41,
      heightCm: 169.5,
      weightKg: 71.4,
      peakHeartRatePercent: 80,
      expected: 668.9,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 361 - 4 x 81 + 2 x 168 + 3 x 82 - 1.5 x 70
    {
      sexAtBirth: 'male',
      ageYears: 81,
      heightCm: 168,
      weightKg: 70,
      peakHeartRatePercent: 82,
      expected: 514,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 331 - 4 x 81 + 2 x 154 + 3 x 82 - 1.5 x 55
    {
      sexAtBirth: 'female',
      ageYears: 81,
      heightCm: 154,
      weightKg: 55,
      peakHeartRatePercent: 82,
      expected: 478.5,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 331 - 4 x 39 + 2 x 160 + 3 x 78 - 1.5 x 62
    {
      sexAtBirth: 'female',
      ageYears: 39,
      heightCm: 160,
      weightKg: 62,
      peakHeartRatePercent: 78,
      expected: 636,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(CASANOVA_2011, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      expected: -40,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70, peakHeartRatePercent: 70 },
      expected: 20,
    },
    {
      name: '10 kg, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80, peakHeartRatePercent: 70 },
      expected: -15,
    },
    {
      name: '10 % of heart rate, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 80 },
      expected: 30,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      expected: -40,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180, weightKg: 70, peakHeartRatePercent: 70 },
      expected: 20,
    },
    {
      name: '10 kg, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 80, peakHeartRatePercent: 70 },
      expected: -15,
    },
    {
      name: '10 % of heart rate, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 80 },
      expected: 30,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70, peakHeartRatePercent: 70 },
      expected: 30,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(CASANOVA_2011, from, to)).toBeCloseTo(expected, 9);
  });

  // The literal reading, heart rate divided by percent (120 / 75 = 1.6), would add 3 x 1.6 = 4.8 m; the percent adds 225 m.
  it('reads the heart-rate term as a percentage', () => {
    const person = { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 } as const;
    const percent = peakHeartRatePercent(120, 60);
    expect(percent).toBe(75);
    // 361 - 240 + 340 + 225 - 105
    expect(predictedFor(CASANOVA_2011, { ...person, peakHeartRatePercent: percent }).predicted).toBe(581);
  });
});
