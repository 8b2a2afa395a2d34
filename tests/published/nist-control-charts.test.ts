// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (individual measurements: flow rate) and 6.3.3.2
// (proportions: wafers), data and printed limits read in a public copy.
// The handbook takes 3 / 1.128 for the factor of the moving range, the product its usual rounding 2.66: a limit differs by
// 0.0004 times the mean moving range. Both are held here.
import { describe, expect, it } from 'vitest';
import { chartSignals } from '../../src/domain/statistics/chart-signals.js';
import { pChart, xmrChart } from '../../src/domain/statistics/control-chart.js';
import { expectPrinted, expectWithin } from '../support/cohort-groups.js';

describe('flow rate', () => {
  const FLOW_RATE = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  // Two periods without a value make the ten enough for limits, and add no range.
  const chart = xmrChart([null, ...FLOW_RATE, null]);

  it('needs twelve values for limits: the ten of the handbook make a run chart', () => {
    expect(chart.kind).toBe('run');
    expect(xmrChart(FLOW_RATE)).toMatchObject({ kind: 'run', movingRange: null });
    // Median of ten: half way between 51.2 and 51.3.
    expect(chart.centre).toBeCloseTo(51.25, 12);
  });

  it('has the printed mean, mean range and limits, continued so that the mean and the mean range stay', () => {
    // Three more values that leave the mean at 50.81 and the mean range at 16.9 / 9: the ranges added are 1.29,
    // and two more that sum to 3 x 16.9 / 9 - 1.29.
    const meanRange = 16.9 / 9;
    const further = (3 * meanRange - 1.29) / 2;
    const values = [...FLOW_RATE, 50.81, 50.81 + further, 50.81];
    const { centre, points, movingRange, kind } = xmrChart(values);
    const moved = further / 13;
    expect(kind).toBe('xmr');
    expectPrinted((centre ?? 0) - moved, '50.81');
    expectPrinted(movingRange?.mean, '1.8778');
    // Printed 6.1349 with 3.2671; 3.267 gives 6.1347.
    expectWithin(movingRange?.upper, 6.1349, 0.0003);
    expectWithin((points[0]?.upper ?? 0) - moved, 55.80488889, 1e-8);
    expectWithin((points[0]?.lower ?? 0) - moved, 45.81511111, 1e-8);
    expectWithin((points[0]?.upper ?? 0) - moved, 55.8041, 0.0004 * meanRange + 0.00005 + 1e-4);
  });
});

describe('a chart of what cannot be negative', () => {
  // Mean 1, every range 2: the lower limit would lie at 1 - 5.32.
  const values = [0, 2, 0, 2, 0, 2, 0, 2, 0, 2, 0, 2];

  it('has its lower limit cut off there, says so, and sees no other signal for it', () => {
    const [cut, whole] = [xmrChart(values, 0), xmrChart(values)];
    expect(cut.lowerLimitCutAt).toBe(0);
    expect(cut.points[0]).toMatchObject({ lower: 0, sigmas: whole.points[0]?.sigmas });
    expect(whole.lowerLimitCutAt).toBeNull();
    expectWithin(whole.points[0]?.lower ?? 0, 1 - 5.32, 1e-9);
    expect(chartSignals(cut)).toEqual(chartSignals(whole));
  });

  it('keeps a lower limit that is not below', () => {
    expect(
      xmrChart(
        values.map((value) => value + 100),
        0,
      ),
    ).toMatchObject({ lowerLimitCutAt: null });
  });
});

describe('wafers', () => {
  const COUNTS = [
    12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9,
    6,
  ];
  const chart = pChart(COUNTS.map((numerator) => ({ numerator, denominator: 50 })));

  it('has the printed centre and limits', () => {
    expectPrinted(chart.centre, '0.2313');
    // The handbook works on with the rounded centre.
    expectWithin(chart.points[0]?.upper, 0.4103, 0.00011);
    expectWithin(chart.points[0]?.lower, 0.0524, 0.00011);
    expectWithin(chart.points[0]?.upper, 0.2313333333 + 3 * Math.sqrt((347 * 1153) / 1500 ** 2 / 50), 1e-9);
  });

  it('has two samples outside, as the handbook says: the 15th and the 23rd', () => {
    const outside = chartSignals(chart).filter(({ rule }) => rule === 'outside');
    expect(outside.map(({ at }) => at + 1)).toEqual([15, 23]);
  });
});
