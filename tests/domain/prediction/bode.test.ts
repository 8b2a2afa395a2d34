import { describe, expect, it } from 'vitest';
import { decimal } from '../../../src/domain/exact/fraction.js';
import { bodeIndex, type BodeParts } from '../../../src/domain/prediction/bode.js';
import { exactBodyMassIndex } from '../../../src/domain/prediction/body-mass-index.js';
import { DIAGNOSES } from '../../../src/domain/referral/closed-sets.js';

const PARTS: BodeParts = {
  diagnosis: 'copd',
  fev1PercentPredicted: 65,
  sixMinuteWalkDistanceM: 350,
  mmrcGrade: 0,
  bodyMassIndex: decimal(25),
};

describe('BODE index: what it needs', () => {
  // Our rule, common practice, no source: the published bands are whole numbers.
  it.each([
    [64.5, 0],
    [64.4, 1],
    [49.5, 1],
    [49.4, 2],
    [35.5, 2],
    [35.4, 3],
  ])(
    'rounds a fractional FEV1 of %f %% half up before the bands: %i points',
    (fev1PercentPredicted, points) => {
      expect(bodeIndex({ ...PARTS, fev1PercentPredicted })).toMatchObject({ kind: 'scored', points });
    },
  );

  it.each(DIAGNOSES.filter((diagnosis) => diagnosis !== 'copd'))('is not given for %s', (diagnosis) => {
    expect(bodeIndex({ ...PARTS, diagnosis })).toMatchObject({ kind: 'not-scored', reason: 'not-copd' });
  });

  it.each([
    { fev1PercentPredicted: null },
    { sixMinuteWalkDistanceM: null },
    { mmrcGrade: null },
    { bodyMassIndex: null },
  ])('is not given without all four parts: %o', (absent) => {
    expect(bodeIndex({ ...PARTS, ...absent })).toMatchObject({ kind: 'not-scored', reason: 'part-missing' });
  });

  it.each([
    { mmrcGrade: 5 },
    { mmrcGrade: -1 },
    { mmrcGrade: 1.5 },
    { fev1PercentPredicted: 4 },
    { fev1PercentPredicted: 151 },
    { fev1PercentPredicted: Number.NaN },
    { sixMinuteWalkDistanceM: -1 },
    { sixMinuteWalkDistanceM: 349.5 },
  ])('is not given for a part that cannot be: %o', (wrong) => {
    expect(bodeIndex({ ...PARTS, ...wrong })).toMatchObject({
      kind: 'not-scored',
      reason: 'part-not-accepted',
    });
  });

  it('tells the exact index of 21 from one just above it', () => {
    // 60.69 / 1.70^2 = 60.69 / 2.89 = 21
    const exactly = exactBodyMassIndex({ heightCm: 170, weightKg: 60.69 });
    expect(exactly).toEqual({ numerator: 21, denominator: 1 });
    expect(bodeIndex({ ...PARTS, bodyMassIndex: exactly })).toMatchObject({ bodyMassPoints: 1 });
    const above = exactBodyMassIndex({ heightCm: 170, weightKg: 60.7 });
    expect(bodeIndex({ ...PARTS, bodyMassIndex: above })).toMatchObject({ bodyMassPoints: 0 });
  });

  it('counts a walk of 0 m as a result', () => {
    expect(bodeIndex({ ...PARTS, sixMinuteWalkDistanceM: 0 })).toMatchObject({ kind: 'scored', points: 3 });
  });
});
