// Source: Britto RR and others 2013, Braz J Phys Ther 17:556-563, abstract, first equation.
// The oldest age was not seen: every age is marked.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { BRITTO_2013_BMI } from '../../src/domain/prediction/equations/britto-2013-bmi.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('six-minute walk distance, Britto 2013', () => {
  it.each([
    // 890.46 - 6.11 x 27 + 0.0345 x 27 x 27 + 48.87 - 4.87 x 78 x 10000 / 180^2
    {
      sexAtBirth: 'male',
      ageYears: 27,
      heightCm: 180,
      weightKg: 78,
      expected: 682.2698,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 60 + 0.0345 x 60 x 60 + 48.87 - 4.87 x 82 x 10000 / 174^2
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 565.0301,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 72 + 0.0345 x 72 x 72 + 48.87 - 4.87 x 76 x 10000 / 171^2
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 551.6823,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 30 + 0.0345 x 30 x 30 - 4.87 x 60 x 10000 / 166^2
    {
      sexAtBirth: 'female',
      ageYears: 30,
      heightCm: 166,
      weightKg: 60,
      expected: 632.1714,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 60 + 0.0345 x 60 x 60 - 4.87 x 68 x 10000 / 162^2
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 521.875,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 78 + 0.0345 x 78 x 78 - 4.87 x 60 x 10000 / 157^2
    {
      sexAtBirth: 'female',
      ageYears: 78,
      heightCm: 157,
      weightKg: 60,
      expected: 505.2336,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 18 + 0.0345 x 18 x 18 + 48.87 - 4.87 x 80 x 10000 / 175^2
    {
      sexAtBirth: 'male',
      ageYears: 18,
      heightCm: 175,
      weightKg: 80,
      expected: 713.3117,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 18 + 0.0345 x 18 x 18 - 4.87 x 62 x 10000 / 160^2
    {
      sexAtBirth: 'female',
      ageYears: 18,
      heightCm: 160,
      weightKg: 62,
      expected: 673.7127,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 90 + 0.0345 x 90 x 90 + 48.87 - 4.87 x 70 x 10000 / 168^2
    {
      sexAtBirth: 'male',
      ageYears: 90,
      heightCm: 168,
      weightKg: 70,
      expected: 548.0963,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 90 + 0.0345 x 90 x 90 - 4.87 x 55 x 10000 / 154^2
    {
      sexAtBirth: 'female',
      ageYears: 90,
      heightCm: 154,
      weightKg: 55,
      expected: 507.0694,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 890.46 - 6.11 x 19 + 0.0345 x 19 x 19 + 48.87 - 4.87 x 71.4 x 10000 / 169.5^2
    {
      sexAtBirth: 'male',
      ageYears: 19,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 714.666,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(BRITTO_2013_BMI, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -23.15,
    },
    {
      name: 'ten years from 60 to 70, men',
      from: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 70, heightCm: 170, weightKg: 70 },
      expected: -16.25,
    },
    {
      name: 'one unit of body mass index, 25 to 26 at 200 cm, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 200, weightKg: 100 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 200, weightKg: 104 },
      expected: -4.87,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -23.15,
    },
    {
      name: 'ten years from 60 to 70, women',
      from: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 70, heightCm: 170, weightKg: 70 },
      expected: -16.25,
    },
    {
      name: 'one unit of body mass index, 25 to 26 at 200 cm, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 100 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 104 },
      expected: -4.87,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      expected: 48.87,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(BRITTO_2013_BMI, from, to)).toBeCloseTo(expected, 9);
  });

  // 6.11 / (2 x 0.0345) = 88.55 years: the parabola is level between 88 and 89 and rises after.
  it('turns upward after 88.6 years, so that those ages must be marked', () => {
    const person = { sexAtBirth: 'female', heightCm: 160, weightKg: 64 } as const;
    const at = (ageYears: number) => predictedFor(BRITTO_2013_BMI, { ...person, ageYears });
    expect(at(88).predicted).toBeLessThan(at(87).predicted);
    expect(at(90).predicted).toBeGreaterThan(at(89).predicted);
    expect(at(90).beyondAgesStudied).toBe(true);
  });
});
