// Source: Gibbons WJ and others 2001, J Cardiopulm Rehabil 21:87-93; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// Ages of the sample: from memory.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { GIBBONS_2001 } from '../../src/domain/prediction/equations/gibbons-2001.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('six-minute walk distance, Gibbons 2001', () => {
  it.each([
    // 868.8 - 2.99 x 27
    { sexAtBirth: 'male', ageYears: 27, expected: 788.07, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 60
    { sexAtBirth: 'male', ageYears: 60, expected: 689.4, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 72
    { sexAtBirth: 'male', ageYears: 72, expected: 653.52, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 30 - 74.7
    { sexAtBirth: 'female', ageYears: 30, expected: 704.4, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 60 - 74.7
    { sexAtBirth: 'female', ageYears: 60, expected: 614.7, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 78 - 74.7
    { sexAtBirth: 'female', ageYears: 78, expected: 560.88, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 20
    { sexAtBirth: 'male', ageYears: 20, expected: 809, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 20 - 74.7
    { sexAtBirth: 'female', ageYears: 20, expected: 734.3, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 80
    { sexAtBirth: 'male', ageYears: 80, expected: 629.6, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 80 - 74.7
    { sexAtBirth: 'female', ageYears: 80, expected: 554.9, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 21
    { sexAtBirth: 'male', ageYears: 21, expected: 806.01, lowerLimit: null, isBeyondAges: false },
    // 868.8 - 2.99 x 81
    { sexAtBirth: 'male', ageYears: 81, expected: 626.61, lowerLimit: null, isBeyondAges: true },
    // 868.8 - 2.99 x 81 - 74.7
    { sexAtBirth: 'female', ageYears: 81, expected: 551.91, lowerLimit: null, isBeyondAges: true },
    // 868.8 - 2.99 x 19 - 74.7
    { sexAtBirth: 'female', ageYears: 19, expected: 737.29, lowerLimit: null, isBeyondAges: true },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(GIBBONS_2001, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50 },
      to: { sexAtBirth: 'male', ageYears: 60 },
      expected: -29.9,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50 },
      to: { sexAtBirth: 'female', ageYears: 60 },
      expected: -29.9,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50 },
      to: { sexAtBirth: 'male', ageYears: 50 },
      expected: 74.7,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(GIBBONS_2001, from, to)).toBeCloseTo(expected, 9);
  });
});
