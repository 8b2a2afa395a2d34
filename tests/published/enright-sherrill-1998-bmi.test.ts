// Source: Enright PL, Sherrill DL 1998, Am J Respir Crit Care Med 158:1384-1387, form with body mass index, as quoted on a page of a professional association.
// Lower limits: 153 m (men), 139 m (women), from the same page.
// The paper prints no worked person. Expected values are worked from its coefficients by exact rational arithmetic, outside
// this program, and given to four decimals; tolerance half a unit of the fourth decimal. The sum stands above each person.
import { describe, expect, it } from 'vitest';
import { ENRIGHT_SHERRILL_1998_BMI } from '../../src/domain/prediction/equations/enright-sherrill-1998-bmi.js';
import { percentPredicted } from '../../src/domain/prediction/predict.js';
import { difference, expectWorked, predictedFor } from '../support/predicted-for.js';

describe('six-minute walk distance, Enright and Sherrill 1998 by body mass index', () => {
  it.each([
    // 1140 - 5.61 x 83 x 10000 / 178^2 - 6.94 x 45
    {
      sexAtBirth: 'male',
      ageYears: 45,
      heightCm: 178,
      weightKg: 83,
      expected: 680.7394,
      lowerLimit: 527.7394,
      isBeyondAges: false,
    },
    // 1140 - 5.61 x 82 x 10000 / 174^2 - 6.94 x 60
    {
      sexAtBirth: 'male',
      ageYears: 60,
      heightCm: 174,
      weightKg: 82,
      expected: 571.6579,
      lowerLimit: 418.6579,
      isBeyondAges: false,
    },
    // 1140 - 5.61 x 76 x 10000 / 171^2 - 6.94 x 72
    {
      sexAtBirth: 'male',
      ageYears: 72,
      heightCm: 171,
      weightKg: 76,
      expected: 494.511,
      lowerLimit: 341.511,
      isBeyondAges: false,
    },
    // 1017 - 6.24 x 66 x 10000 / 164^2 - 5.83 x 45
    {
      sexAtBirth: 'female',
      ageYears: 45,
      heightCm: 164,
      weightKg: 66,
      expected: 601.5269,
      lowerLimit: 462.5269,
      isBeyondAges: false,
    },
    // 1017 - 6.24 x 68 x 10000 / 162^2 - 5.83 x 60
    {
      sexAtBirth: 'female',
      ageYears: 60,
      heightCm: 162,
      weightKg: 68,
      expected: 505.5173,
      lowerLimit: 366.5173,
      isBeyondAges: false,
    },
    // 1017 - 6.24 x 63 x 10000 / 159^2 - 5.83 x 72
    {
      sexAtBirth: 'female',
      ageYears: 72,
      heightCm: 159,
      weightKg: 63,
      expected: 441.7398,
      lowerLimit: 302.7398,
      isBeyondAges: false,
    },
    // 1140 - 5.61 x 80 x 10000 / 175^2 - 6.94 x 40
    {
      sexAtBirth: 'male',
      ageYears: 40,
      heightCm: 175,
      weightKg: 80,
      expected: 715.8531,
      lowerLimit: 562.8531,
      isBeyondAges: false,
    },
    // 1017 - 6.24 x 62 x 10000 / 160^2 - 5.83 x 40
    {
      sexAtBirth: 'female',
      ageYears: 40,
      heightCm: 160,
      weightKg: 62,
      expected: 632.675,
      lowerLimit: 493.675,
      isBeyondAges: false,
    },
    // 1140 - 5.61 x 70 x 10000 / 168^2 - 6.94 x 80
    {
      sexAtBirth: 'male',
      ageYears: 80,
      heightCm: 168,
      weightKg: 70,
      expected: 445.6631,
      lowerLimit: 292.6631,
      isBeyondAges: false,
    },
    // 1017 - 6.24 x 55 x 10000 / 154^2 - 5.83 x 80
    {
      sexAtBirth: 'female',
      ageYears: 80,
      heightCm: 154,
      weightKg: 55,
      expected: 405.8876,
      lowerLimit: 266.8876,
      isBeyondAges: false,
    },
    // 1140 - 5.61 x 71.4 x 10000 / 169.5^2 - 6.94 x 41
    {
      sexAtBirth: 'male',
      ageYears: 41,
      heightCm: 169.5,
      weightKg: 71.4,
      expected: 716.0411,
      lowerLimit: 563.0411,
      isBeyondAges: false,
    },
    // 1140 - 5.61 x 70 x 10000 / 168^2 - 6.94 x 81
    {
      sexAtBirth: 'male',
      ageYears: 81,
      heightCm: 168,
      weightKg: 70,
      expected: 438.7231,
      lowerLimit: 285.7231,
      isBeyondAges: true,
    },
    // 1017 - 6.24 x 55 x 10000 / 154^2 - 5.83 x 81
    {
      sexAtBirth: 'female',
      ageYears: 81,
      heightCm: 154,
      weightKg: 55,
      expected: 400.0576,
      lowerLimit: 261.0576,
      isBeyondAges: true,
    },
    // 1017 - 6.24 x 62 x 10000 / 160^2 - 5.83 x 39
    {
      sexAtBirth: 'female',
      ageYears: 39,
      heightCm: 160,
      weightKg: 62,
      expected: 638.505,
      lowerLimit: 499.505,
      isBeyondAges: true,
    },
  ] as const)('$sexAtBirth, $ageYears years: $expected m', (worked) => {
    expectWorked(ENRIGHT_SHERRILL_1998_BMI, worked);
  });

  // Each coefficient by itself: two people who differ in one thing. Tolerance 1e-9 for floating point.
  it.each([
    {
      name: 'ten years from 50 to 60, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'male', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -69.4,
    },
    {
      name: 'one unit of body mass index, 25 to 26 at 200 cm, men',
      from: { sexAtBirth: 'male', ageYears: 50, heightCm: 200, weightKg: 100 },
      to: { sexAtBirth: 'male', ageYears: 50, heightCm: 200, weightKg: 104 },
      expected: -5.61,
    },
    {
      name: 'ten years from 50 to 60, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 170, weightKg: 70 },
      to: { sexAtBirth: 'female', ageYears: 60, heightCm: 170, weightKg: 70 },
      expected: -58.3,
    },
    {
      name: 'one unit of body mass index, 25 to 26 at 200 cm, women',
      from: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 100 },
      to: { sexAtBirth: 'female', ageYears: 50, heightCm: 200, weightKg: 104 },
      expected: -6.24,
    },
  ] as const)('$name: $expected m', ({ from, to, expected }) => {
    expect(difference(ENRIGHT_SHERRILL_1998_BMI, from, to)).toBeCloseTo(expected, 9);
  });

  // The one worked example that was found: a clinician's, not the paper's. Woman of 58 years, 61 in, 160 lb, walked 1550 ft
  // (472.44 m); stated prediction 489.8195 m, 96 %. Converted exactly: 154.94 cm, 72.5747792 kg, index 30.2314.
  // 1017 - 6.24 x 30.2314 - 5.83 x 58 = 490.216, 96.37 %. The gap of 0.40 m means that the example used an index of about
  // 30.30 (0.3967 / 6.24 = 0.064 more). Tolerance 0.01 m: the index is given to four decimals.
  it('differs from the published worked example by the 0.40 m that its body mass index explains', () => {
    const { predicted, lowerLimit } = predictedFor(ENRIGHT_SHERRILL_1998_BMI, {
      sexAtBirth: 'female',
      ageYears: 58,
      heightCm: 61 * 2.54,
      weightKg: 160 * 0.45359237,
    });
    expect(Math.abs(predicted - 490.216)).toBeLessThan(0.01);
    expect(Math.abs(predicted - 489.8195 - 0.4)).toBeLessThan(0.01);
    expect(Math.round(percentPredicted(472.44, predicted))).toBe(96);
    // The example writes -139 into its formula and leaves it out of its sum; here it is a result of its own.
    expect(predicted - (lowerLimit ?? Number.NaN)).toBeCloseTo(139, 9);
  });
});
