// Source: Celli BR and others 2004, N Engl J Med 350:1005, cut-points as reproduced in Respir Res 2009 10:1, Table 1.
// FEV1 65 and more, 50-64, 36-49, 35 and less; distance 350 and more, 250-349, 150-249, 149 and less; mMRC 0-1, 2, 3, 4;
// body mass index above 21, 21 and less. Tolerance: none, points are whole.
import { describe, expect, it } from 'vitest';
import { decimal } from '../../src/domain/exact/fraction.js';
import { bodeIndex, type BodeParts } from '../../src/domain/prediction/bode.js';

const BEST: BodeParts = {
  diagnosis: 'copd',
  fev1PercentPredicted: 65,
  sixMinuteWalkDistanceM: 350,
  mmrcGrade: 1,
  bodyMassIndex: decimal(21.1),
};

describe('BODE index, Celli 2004', () => {
  it.each([
    { fev1: 65, walkM: 350, grade: 1, index: 21.1, points: 0 },
    { fev1: 64, walkM: 349, grade: 2, index: 21, points: 4 },
    { fev1: 36, walkM: 150, grade: 3, index: 25, points: 6 },
    { fev1: 35, walkM: 149, grade: 4, index: 18, points: 10 },
  ])(
    'FEV1 $fev1 %, $walkM m, grade $grade, index $index: $points',
    ({ fev1, walkM, grade, index, points }) => {
      expect(
        bodeIndex({
          diagnosis: 'copd',
          fev1PercentPredicted: fev1,
          sixMinuteWalkDistanceM: walkM,
          mmrcGrade: grade,
          bodyMassIndex: decimal(index),
        }),
      ).toMatchObject({ kind: 'scored', points });
    },
  );

  it.each([
    [150, 0],
    [65, 0],
    [64, 1],
    [50, 1],
    [49, 2],
    [36, 2],
    [35, 3],
    [5, 3],
  ])('FEV1 %i %% of predicted: %i points', (fev1PercentPredicted, airflowPoints) => {
    expect(bodeIndex({ ...BEST, fev1PercentPredicted })).toMatchObject({
      airflowPoints,
      points: airflowPoints,
    });
  });

  it.each([
    [350, 0],
    [349, 1],
    [250, 1],
    [249, 2],
    [150, 2],
    [149, 3],
    [0, 3],
  ])('%i m in six minutes: %i points', (sixMinuteWalkDistanceM, walkPoints) => {
    expect(bodeIndex({ ...BEST, sixMinuteWalkDistanceM })).toMatchObject({ walkPoints, points: walkPoints });
  });

  it.each([
    [0, 0],
    [1, 0],
    [2, 1],
    [3, 2],
    [4, 3],
  ])('mMRC grade %i: %i points', (mmrcGrade, breathlessnessPoints) => {
    expect(bodeIndex({ ...BEST, mmrcGrade })).toMatchObject({
      breathlessnessPoints,
      points: breathlessnessPoints,
    });
  });

  it.each([
    [21.001, 0],
    [21, 1],
    [20.999, 1],
  ])('body mass index %f: %i points', (index, bodyMassPoints) => {
    expect(bodeIndex({ ...BEST, bodyMassIndex: decimal(index) })).toMatchObject({
      bodyMassPoints,
      points: bodyMassPoints,
    });
  });
});
