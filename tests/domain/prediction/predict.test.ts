import { describe, expect, it } from 'vitest';
import { CASANOVA_2011 } from '../../../src/domain/prediction/equations/casanova-2011.js';
import { CAZZOLETTI_2022 } from '../../../src/domain/prediction/equations/cazzoletti-2022.js';
import { ENRIGHT_SHERRILL_1998 } from '../../../src/domain/prediction/equations/enright-sherrill-1998.js';
import { GIBBONS_2001 } from '../../../src/domain/prediction/equations/gibbons-2001.js';
import { ITAKI_2018 } from '../../../src/domain/prediction/equations/itaki-2018.js';
import type { KnownInputs } from '../../../src/domain/prediction/known-inputs.js';
import {
  isBelowLowerLimit,
  peakHeartRatePercent,
  percentPredicted,
  predictResult,
} from '../../../src/domain/prediction/predict.js';
import type { PredictionEquation } from '../../../src/domain/prediction/prediction-equation.js';

const MAN: KnownInputs = { sexAtBirth: 'male', ageYears: 60, heightCm: 174, weightKg: 82 };

describe('why there is no prediction', () => {
  it.each(['indeterminate', 'not-known', null] as const)('sex at birth %s is not assumed', (sexAtBirth) => {
    expect(predictResult(ENRIGHT_SHERRILL_1998, { ...MAN, sexAtBirth })).toMatchObject({
      kind: 'not-predicted',
      equationId: 'enright-sherrill-1998',
      reason: 'sex-not-known',
    });
  });

  it.each([
    [{ ageYears: null }, 'age-missing'],
    [{ heightCm: null }, 'height-missing'],
    [{ weightKg: null }, 'weight-missing'],
    [{ ageYears: 17 }, 'age-not-accepted'],
    [{ ageYears: 111 }, 'age-not-accepted'],
    [{ ageYears: 60.5 }, 'age-not-accepted'],
    [{ ageYears: Number.NaN }, 'age-not-accepted'],
    [{ heightCm: 1.74 }, 'height-not-accepted'],
    [{ heightCm: 119.5 }, 'height-not-accepted'],
    [{ heightCm: 220.5 }, 'height-not-accepted'],
    [{ heightCm: 0 }, 'height-not-accepted'],
    [{ weightKg: 24.9 }, 'weight-not-accepted'],
    [{ weightKg: 300.1 }, 'weight-not-accepted'],
  ] as const)('%o: %s', (change, reason) => {
    expect(predictResult(ENRIGHT_SHERRILL_1998, { ...MAN, ...change })).toMatchObject({
      kind: 'not-predicted',
      reason,
    });
  });

  it.each([
    { ageYears: 18 },
    { ageYears: 110 },
    { heightCm: 120 },
    { heightCm: 220 },
    { weightKg: 25 },
    { weightKg: 300 },
  ])('takes the edge of what is accepted: %o', (change) => {
    // A tall man, so that the equation stays positive at every edge.
    const person = { ...MAN, heightCm: 190, ...change };
    expect(predictResult(GIBBONS_2001, person).kind).toBe('predicted');
    expect(predictResult(ENRIGHT_SHERRILL_1998, person)).not.toMatchObject({
      reason: expect.stringContaining('not-accepted') as string,
    });
  });

  it('says in words what is accepted when a height was typed in metres', () => {
    const result = predictResult(ENRIGHT_SHERRILL_1998, { ...MAN, heightCm: 1.74 });
    expect(result.kind === 'not-predicted' ? result.words : '').toBe(
      'The height must be from 120 to 220 cm.',
    );
  });

  it('names the first thing that is absent: sex before age before size', () => {
    expect(predictResult(ENRIGHT_SHERRILL_1998, {})).toMatchObject({ reason: 'sex-not-known' });
    expect(predictResult(ENRIGHT_SHERRILL_1998, { sexAtBirth: 'female' })).toMatchObject({
      reason: 'age-missing',
    });
    expect(predictResult(ENRIGHT_SHERRILL_1998, { sexAtBirth: 'female', ageYears: 60 })).toMatchObject({
      reason: 'height-missing',
    });
  });

  it('does not ask for what the equation does not use', () => {
    // 868.8 - 2.99 x 60 = 689.4; a height in metres does not matter to it.
    const result = predictResult(GIBBONS_2001, { sexAtBirth: 'male', ageYears: 60, heightCm: 1.74 });
    expect(result).toMatchObject({ kind: 'predicted' });
  });

  it('asks for the heart rate and refuses a ratio typed for a percentage', () => {
    expect(predictResult(CASANOVA_2011, MAN)).toMatchObject({ reason: 'peak-heart-rate-missing' });
    expect(predictResult(CASANOVA_2011, { ...MAN, peakHeartRatePercent: 0.75 })).toMatchObject({
      reason: 'peak-heart-rate-not-accepted',
    });
    expect(predictResult(CASANOVA_2011, { ...MAN, peakHeartRatePercent: 75 })).toMatchObject({
      kind: 'predicted',
    });
  });

  it('asks whether the person is active; being inactive is an answer', () => {
    expect(predictResult(CAZZOLETTI_2022, MAN)).toMatchObject({ reason: 'activity-missing' });
    expect(predictResult(CAZZOLETTI_2022, { ...MAN, isActive: null })).toMatchObject({
      reason: 'activity-missing',
    });
    expect(predictResult(CAZZOLETTI_2022, { ...MAN, isActive: false })).toMatchObject({ kind: 'predicted' });
  });

  it('gives no prediction where the equation falls below zero, rather than clipping it', () => {
    // 667 + 2.11 x 120 - 5.78 x 110 - 2.29 x 300 = -402.6
    const person = { sexAtBirth: 'female', ageYears: 110, heightCm: 120, weightKg: 300 } as const;
    expect(predictResult(ENRIGHT_SHERRILL_1998, person)).toMatchObject({ reason: 'no-positive-value' });
  });

  it('finds out an equation that uses what it does not name', () => {
    const careless: PredictionEquation = {
      ...ENRIGHT_SHERRILL_1998,
      needs: ['sexAtBirth', 'ageYears', 'heightCm'],
    };
    expect(() => predictResult(careless, MAN)).toThrow('uses weightKg without naming it');
  });
});

describe('ages studied', () => {
  it.each([
    [39, true],
    [40, false],
    [80, false],
    [81, true],
  ])('at %i years the mark of a sample of 40 to 80 is %s', (ageYears, beyondAgesStudied) => {
    expect(predictResult(ENRIGHT_SHERRILL_1998, { ...MAN, ageYears })).toMatchObject({ beyondAgesStudied });
  });

  it.each([
    ['male', 78, false],
    ['male', 79, true],
    ['female', 76, false],
    ['female', 77, true],
  ] as const)('keeps the ages of women and men apart: %s, %i years, %s', (sexAtBirth, ageYears, marked) => {
    expect(predictResult(CAZZOLETTI_2022, { ...MAN, sexAtBirth, ageYears, isActive: true })).toMatchObject({
      beyondAgesStudied: marked,
    });
  });

  it.each([18, 50, 60, 90])('marks every age where the ages were never seen: %i', (ageYears) => {
    expect(predictResult(ITAKI_2018, { ...MAN, ageYears })).toMatchObject({ beyondAgesStudied: true });
  });

  it.each([
    { min: 50, max: null },
    { min: null, max: 70 },
  ])('marks an age on the side whose limit was never seen: %o', (limits) => {
    const equation: PredictionEquation = { ...GIBBONS_2001, agesStudiedYears: { ...limits, status: null } };
    expect(predictResult(equation, MAN)).toMatchObject({ kind: 'predicted', beyondAgesStudied: true });
  });
});

describe('percentage of predicted and lower limit', () => {
  it('gives the result in percent, unrounded; 0 m is 0 %', () => {
    expect(percentPredicted(281.33, 562.66)).toBeCloseTo(50, 12);
    expect(percentPredicted(0, 562.66)).toBe(0);
    expect(percentPredicted(600, 500)).toBe(120);
  });

  it.each([0, -5, Number.NaN])('refuses a prediction of %d', (predicted) => {
    expect(() => percentPredicted(300, predicted)).toThrow(RangeError);
  });

  it('is below the limit only when less than it', () => {
    // 562.66 - 153 = 409.66
    expect(isBelowLowerLimit(409, 409.66)).toBe(true);
    expect(isBelowLowerLimit(410, 409.66)).toBe(false);
    expect(isBelowLowerLimit(0, 409.66)).toBe(true);
  });

  it('does not count a result that equals the limit as below it, whatever floating point adds', () => {
    // 0.1 + 0.2 is above 0.3 in floating point.
    expect(isBelowLowerLimit(0.3, 0.1 + 0.2)).toBe(false);
    // Man of 50, 150 cm, 75 kg: -309 + 1135.5 - 251 - 132 = 443.5, limit 290.5.
    const result = predictResult(ENRIGHT_SHERRILL_1998, {
      sexAtBirth: 'male',
      ageYears: 50,
      heightCm: 150,
      weightKg: 75,
    });
    if (result.kind !== 'predicted') throw new Error(result.reason);
    expect(isBelowLowerLimit(290.5, result.lowerLimit)).toBe(false);
    expect(isBelowLowerLimit(290, result.lowerLimit)).toBe(true);
  });

  it('knows no answer where the source gives no limit', () => {
    expect(isBelowLowerLimit(100, null)).toBeNull();
  });

  it('is another finding than a fixed share of predicted', () => {
    // Lower limit in percent of predicted, women: 72 y 159 cm 63 kg 303.1 / 442.1 = 69 %; 45 y 164 cm 66 kg 462.8 / 601.8 = 77 %.
    const share = (ageYears: number, heightCm: number, weightKg: number) => {
      const result = predictResult(ENRIGHT_SHERRILL_1998, {
        sexAtBirth: 'female',
        ageYears,
        heightCm,
        weightKg,
      });
      if (result.kind !== 'predicted' || result.lowerLimit === null) throw new Error('no limit');
      return Math.round(percentPredicted(result.lowerLimit, result.predicted));
    };
    expect(share(72, 159, 63)).toBe(69);
    expect(share(45, 164, 66)).toBe(77);
  });
});

describe('peak heart rate in percent of 220 less age', () => {
  it('is 75 % for 120 beats at 60 years', () => {
    expect(peakHeartRatePercent(120, 60)).toBe(75);
  });

  it('refuses an age at which nothing is left', () => {
    expect(() => peakHeartRatePercent(120, 220)).toThrow(RangeError);
  });
});
