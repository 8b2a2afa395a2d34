// Bounds are worked by hand; the Wilson limits of 62 of 88 were computed once from the published formula, to 1e-9.
import { describe, expect, it } from 'vitest';
import { responderBounds } from '../../../src/domain/statistics/responders.js';

describe('responders with their bounds', () => {
  it('62 of 88 measured, 120 eligible: 62/88, worst 62/120, best 94/120, measured 88/120', () => {
    const bounds = responderBounds({ achieved: 62, measured: 88, eligible: 120 });
    expect(bounds.completeCase).toBeCloseTo(0.7045454545, 9);
    expect(bounds.worst).toBeCloseTo(0.5166666667, 9);
    expect(bounds.best).toBeCloseTo(0.7833333333, 9);
    expect(bounds.measuredShare).toBeCloseTo(0.7333333333, 9);
    expect(bounds.interval?.low).toBeCloseTo(0.6022884358, 9);
    expect(bounds.interval?.high).toBeCloseTo(0.7896914005, 9);
  });

  it('carries its counts', () => {
    expect(responderBounds({ achieved: 0, measured: 1, eligible: 2 })).toMatchObject({
      achieved: 0,
      measured: 1,
      eligible: 2,
    });
  });

  it('has one figure where everybody was measured', () => {
    expect(responderBounds({ achieved: 3, measured: 4, eligible: 4 })).toMatchObject({
      completeCase: 0.75,
      worst: 0.75,
      best: 0.75,
      measuredShare: 1,
    });
  });

  it('leaves everything open where nobody was measured', () => {
    expect(responderBounds({ achieved: 0, measured: 0, eligible: 5 })).toEqual({
      achieved: 0,
      measured: 0,
      eligible: 5,
      completeCase: null,
      interval: null,
      worst: 0,
      best: 1,
      measuredShare: 0,
      fewMeasured: true,
    });
  });

  it('says nothing of nobody', () => {
    expect(responderBounds({ achieved: 0, measured: 0, eligible: 0 })).toMatchObject({
      completeCase: null,
      interval: null,
      worst: null,
      best: null,
      measuredShare: null,
      fewMeasured: false,
    });
  });

  it.each([
    [6, 10, true],
    [7, 10, false],
    [69, 99, true],
    [70, 100, false],
  ])('%d measured of %d eligible: few measured is %s', (measured, eligible, fewMeasured) => {
    expect(responderBounds({ achieved: 0, measured, eligible }).fewMeasured).toBe(fewMeasured);
  });

  it.each([
    ['more achieved than measured', { achieved: 3, measured: 2, eligible: 5 }],
    ['more measured than eligible', { achieved: 1, measured: 6, eligible: 5 }],
    ['less than nobody', { achieved: -1, measured: 2, eligible: 5 }],
    ['part of a person', { achieved: 1, measured: 2, eligible: 5.5 }],
    ['part of a measured person', { achieved: 1, measured: 2.5, eligible: 5 }],
    ['no number', { achieved: 1, measured: 2, eligible: Number.NaN }],
  ])('refuses %s', (_, input) => {
    expect(() => responderBounds(input)).toThrow(RangeError);
  });
});
