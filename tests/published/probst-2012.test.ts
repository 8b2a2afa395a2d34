// Source: Probst VS and others 2012, Respir Med 106:243-248, abstract.
// Ages of the sample: from memory.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { PROBST_2012 } from '../../src/domain/prediction/equations/probst-2012.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('incremental shuttle walk distance, Probst 2012', () => {
  it.each([
    // 1449.701 - 11.735 x 27 + 241.897 - 5.686 x 78 x 10000 / 180^2
    {
      sexAtBirth: 'male',
      ageYears: 27,
      heightCm: 180,
      weightKg: 78,
      expected: 1237.8678,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 60 + 241.897 - 5.686 x 82 x 10000 / 174^2
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 833.4975,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 72 + 241.897 - 5.686 x 76 x 10000 / 171^2
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 698.8937,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 30 - 5.686 x 60 x 10000 / 166^2
    {
      sexAtBirth: 'female',
      ageYears: 30,
      heightCm: 166,
      weightKg: 60,
      expected: 973.8449,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 60 - 5.686 x 68 x 10000 / 162^2
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 598.2728,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 78 - 5.686 x 60 x 10000 / 157^2
    {
      sexAtBirth: 'female',
      ageYears: 78,
      heightCm: 157,
      weightKg: 60,
      expected: 395.9638,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 18 + 241.897 - 5.686 x 80 x 10000 / 175^2
    {
      sexAtBirth: 'male',
      ageYears: 18,
      heightCm: 175,
      weightKg: 80,
      expected: 1331.8358,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 18 - 5.686 x 62 x 10000 / 160^2
    {
      sexAtBirth: 'female',
      ageYears: 18,
      heightCm: 160,
      weightKg: 62,
      expected: 1100.7632,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 83 + 241.897 - 5.686 x 70 x 10000 / 168^2
    {
      sexAtBirth: 'male',
      ageYears: 83,
      heightCm: 168,
      weightKg: 70,
      expected: 576.5712,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 83 - 5.686 x 55 x 10000 / 154^2
    {
      sexAtBirth: 'female',
      ageYears: 83,
      heightCm: 154,
      weightKg: 55,
      expected: 343.8314,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 19 + 241.897 - 5.686 x 71.4 x 10000 / 169.5^2
    {
      sexAtBirth: 'male',
      ageYears: 19,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 1327.3254,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 1449.701 - 11.735 x 84 + 241.897 - 5.686 x 70 x 10000 / 168^2
    {
      sexAtBirth: 'male',
      ageYears: 84,
      heightCm: 168,
      weightKg: 70,
      expected: 564.8362,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 1449.701 - 11.735 x 84 - 5.686 x 55 x 10000 / 154^2
    {
      sexAtBirth: 'female',
      ageYears: 84,
      heightCm: 154,
      weightKg: 55,
      expected: 332.0964,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(PROBST_2012, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -117.35,
    },
    {
      name: 'one unit of body mass index, 25 to 26 at 200 cm, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 200, weightKg: 100 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 200, weightKg: 104 },
      expected: -5.686,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -117.35,
    },
    {
      name: 'one unit of body mass index, 25 to 26 at 200 cm, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 100 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 104 },
      expected: -5.686,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      expected: 241.897,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(PROBST_2012, from, to)).toBeCloseTo(expected, 9);
  });

  // The standard test stops at 1020 m. 1449.701 - 11.735 x 45 + 241.897 - 5.686 x 25 = 1021.373; one year more, 1009.638.
  it('says where the prediction lies above the ceiling of the test, and only there', () => {
    const person = { sexAtBirth: 'male', heightCm: 160, weightKg: 64 } as const;
    const above = predictedFor(PROBST_2012, { ...person, ageYears: 45 });
    expect(above.predicted).toBeCloseTo(1021.373, 6);
    expect(above.ceilingNote).toContain('1020 m');
    const below = predictedFor(PROBST_2012, { ...person, ageYears: 46 });
    expect(below.predicted).toBeCloseTo(1009.638, 6);
    expect(below.ceilingNote).toBeNull();
  });
});
