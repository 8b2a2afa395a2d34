// Source: Hill K and others 2011; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// Ages of the sample: from memory.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { HILL_2011 } from '../../src/domain/prediction/equations/hill-2011.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('six-minute walk distance, Hill 2011', () => {
  it.each([
    // 970.7 - 5.5 x 45 + 56.3
    { sexAtBirth: 'male', ageYears: 45, expected: 779.5, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 60 + 56.3
    { sexAtBirth: 'male', ageYears: 60, expected: 697, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 72 + 56.3
    { sexAtBirth: 'male', ageYears: 72, expected: 631, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 45
    { sexAtBirth: 'female', ageYears: 45, expected: 723.2, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 60
    { sexAtBirth: 'female', ageYears: 60, expected: 640.7, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 72
    { sexAtBirth: 'female', ageYears: 72, expected: 574.7, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 85 + 56.3
    { sexAtBirth: 'male', ageYears: 85, expected: 559.5, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 85
    { sexAtBirth: 'female', ageYears: 85, expected: 503.2, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 46 + 56.3
    { sexAtBirth: 'male', ageYears: 46, expected: 774, lowerLimit: null, isBeyondAges: false },
    // 970.7 - 5.5 x 86 + 56.3
    { sexAtBirth: 'male', ageYears: 86, expected: 554, lowerLimit: null, isBeyondAges: true },
    // 970.7 - 5.5 x 86
    { sexAtBirth: 'female', ageYears: 86, expected: 497.7, lowerLimit: null, isBeyondAges: true },
    // 970.7 - 5.5 x 44
    { sexAtBirth: 'female', ageYears: 44, expected: 728.7, lowerLimit: null, isBeyondAges: true },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(HILL_2011, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50 },
      to: { sexAtBirth: 'male', ageYears: 60 },
      expected: -55,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50 },
      to: { sexAtBirth: 'female', ageYears: 60 },
      expected: -55,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50 },
      to: { sexAtBirth: 'male', ageYears: 50 },
      expected: 56.3,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(HILL_2011, from, to)).toBeCloseTo(expected, 9);
  });
});
