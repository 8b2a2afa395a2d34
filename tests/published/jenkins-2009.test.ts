// Source: Jenkins S and others 2009, Physiother Theory Pract 25:516-522; coefficients in Singh SJ 2014, Eur Respir J 44:1447, Table 5.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { JENKINS_2009 } from '../../src/domain/prediction/equations/jenkins-2009.js';
import { difference, expectWorked } from '../support/predicted-for.js';

describe('six-minute walk distance, Jenkins 2009', () => {
  it.each([
    // 867 - 5.71 x 45 + 1.03 x 178
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 793.39,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 867 - 5.71 x 60 + 1.03 x 174
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 703.62,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 867 - 5.71 x 72 + 1.03 x 171
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 632.01,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 525 - 2.86 x 45 + 2.71 x 164 - 6.22 x 66 x 10000 / 164^2
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 688.1076,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 525 - 2.86 x 60 + 2.71 x 162 - 6.22 x 68 x 10000 / 162^2
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 631.2555,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 525 - 2.86 x 72 + 2.71 x 159 - 6.22 x 63 x 10000 / 159^2
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 594.9682,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 525 - 2.86 x 82 + 2.71 x 156 - 6.22 x 58 x 10000 / 156^2
    {
      sexAtBirth: 'female',
      ageYears: 82,
      heightCm: 156,
      weightKg: 58,
      expected: 564.9987,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 867 - 5.71 x 45 + 1.03 x 175
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 175,
      weightKg: 80,
      expected: 790.3,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 525 - 2.86 x 45 + 2.71 x 160 - 6.22 x 62 x 10000 / 160^2
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 160,
      weightKg: 62,
      expected: 679.2594,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 867 - 5.71 x 85 + 1.03 x 168
    {
      sexAtBirth: 'male',
      ageYears: 85,
      heightCm: 168,
      weightKg: 70,
      expected: 554.69,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 525 - 2.86 x 85 + 2.71 x 154 - 6.22 x 55 x 10000 / 154^2
    {
      sexAtBirth: 'female',
      ageYears: 85,
      heightCm: 154,
      weightKg: 55,
      expected: 554.9914,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 867 - 5.71 x 46 + 1.03 x 169.5
    {
      sexAtBirth: 'male',
      ageYears: 46,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 778.925,
      lowerLimit: null,
      isBeyondAges: false,
    },
    // 867 - 5.71 x 86 + 1.03 x 168
    {
      sexAtBirth: 'male',
      ageYears: 86,
      heightCm: 168,
      weightKg: 70,
      expected: 548.98,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 525 - 2.86 x 86 + 2.71 x 154 - 6.22 x 55 x 10000 / 154^2
    {
      sexAtBirth: 'female',
      ageYears: 86,
      heightCm: 154,
      weightKg: 55,
      expected: 552.1314,
      lowerLimit: null,
      isBeyondAges: true,
    },
    // 525 - 2.86 x 44 + 2.71 x 160 - 6.22 x 62 x 10000 / 160^2
    {
      sexAtBirth: 'female',
      ageYears: 44,
      heightCm: 160,
      weightKg: 62,
      expected: 682.1194,
      lowerLimit: null,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(JENKINS_2009, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -57.1,
    },
    {
      name: '10 cm at 50 years, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 180, weightKg: 70 },
      expected: 10.3,
    },
    {
      name: '10 kg, not in this equation, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 80 },
      expected: 0,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -28.6,
    },
    {
      name: '40 cm at one body mass index of 25, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 160, weightKg: 64 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 100 },
      expected: 108.4,
    },
    {
      name: 'one unit of body mass index, 25 to 26 at 200 cm, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 100 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 104 },
      expected: -6.22,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(JENKINS_2009, from, to)).toBeCloseTo(expected, 9);
  });
});
