// Source: Chetta A and others 2006, Respir Med 100:1573-1578; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// Ages of the sample: from memory.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { CHETTA_2006 } from '../../src/domain/prediction/equations/chetta-2006.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('six-minute walk distance, Chetta 2006', () => {
  it.each([
    // 518.853 + 1.25 x 180 - 2.816 x 25
    {
      sexAtBirth: 'male',
      ageYears: 25,
      heightCm: 180,
      expected: 673.453,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 178 - 2.816 x 40
    {
      sexAtBirth: 'male',
      ageYears: 40,
      heightCm: 178,
      expected: 628.713,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 166 - 2.816 x 30 - 39.07
    {
      sexAtBirth: 'female',
      ageYears: 30,
      heightCm: 166,
      expected: 602.803,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 162 - 2.816 x 48 - 39.07
    {
      sexAtBirth: 'female',
      ageYears: 48,
      heightCm: 162,
      expected: 547.115,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 175 - 2.816 x 20
    {
      sexAtBirth: 'male',
      ageYears: 20,
      heightCm: 175,
      expected: 681.283,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 160 - 2.816 x 20 - 39.07
    {
      sexAtBirth: 'female',
      ageYears: 20,
      heightCm: 160,
      expected: 623.463,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 168 - 2.816 x 50
    {
      sexAtBirth: 'male',
      ageYears: 50,
      heightCm: 168,
      expected: 588.053,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 154 - 2.816 x 50 - 39.07
    {
      sexAtBirth: 'female',
      ageYears: 50,
      heightCm: 154,
      expected: 531.483,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 169.5 - 2.816 x 21
    {
      sexAtBirth: 'male',
      ageYears: 21,
      heightCm: 169.5,
      expected: 671.592,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 518.853 + 1.25 x 168 - 2.816 x 51
    {
      sexAtBirth: 'male',
      ageYears: 51,
      heightCm: 168,
      expected: 585.237,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 518.853 + 1.25 x 154 - 2.816 x 51 - 39.07
    {
      sexAtBirth: 'female',
      ageYears: 51,
      heightCm: 154,
      expected: 528.667,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 518.853 + 1.25 x 160 - 2.816 x 19 - 39.07
    {
      sexAtBirth: 'female',
      ageYears: 19,
      heightCm: 160,
      expected: 626.279,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(CHETTA_2006, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170 },
      expected: -28.16,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180 },
      expected: 12.5,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170 },
      expected: -28.16,
    },
    {
      name: '10 cm at 50 years, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 180 },
      expected: 12.5,
    },
    {
      name: 'men above women of the same age and size',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170 },
      expected: 39.07,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(CHETTA_2006, from, to)).toBeCloseTo(expected, 9);
  });
});
