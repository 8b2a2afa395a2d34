// The sequences are in standard deviations from the centre and worked by hand; points are counted from 1 as on paper.
import { describe, expect, it } from 'vitest';
import { chartSignals } from '../../../src/domain/statistics/chart-signals.js';
import type { ControlChart } from '../../../src/domain/statistics/control-chart.js';

function chartOf(sigmas: readonly (number | null)[]): ControlChart {
  return {
    kind: 'xmr',
    centre: 0,
    points: sigmas.map((value) => ({ value, lower: -3, upper: 3, sigmas: value })),
    lowerLimitCutAt: null,
    movingRange: null,
  };
}

function said(sigmas: readonly (number | null)[]): readonly string[] {
  return chartSignals(chartOf(sigmas)).map(
    ({ rule, at, points, direction }) =>
      `${rule} at ${at + 1} (${points.map((index) => index + 1).join(' ')}) ${direction}`,
  );
}

describe('signals of a chart over time', () => {
  it.each([
    ['a point outside', [0.2, -0.4, 3.1, 0.1], ['outside at 3 (3) up']],
    ['a point on the limit is not outside', [0.2, 3, -3, 0.1], []],
    ['seven on one side', [0.5, 0.4, 0.1, 0.9, 1.2, 0.3, 0.2, -0.1], ['shift at 7 (1 2 3 4 5 6 7) up']],
    [
      'eight on one side are one signal, complete at the seventh',
      [-0.1, 0.5, 0.4, 0.1, 0.9, 1.2, 0.3, 0.2, 0.1],
      ['shift at 8 (2 3 4 5 6 7 8 9) up'],
    ],
    ['six on one side', [0.5, 0.4, 0.1, 0.9, 1.2, 0.3, -0.1], []],
    ['a point on the centre breaks the row', [0.3, 0, 0.4, 0.2, 0.6, 0.1, 0.5, 0.2], []],
    ['seven rising', [-2, -1.5, -1, -0.5, 0, 0.5, 1], ['trend at 7 (1 2 3 4 5 6 7) up']],
    ['seven falling', [1, 0.5, 0.2, -0.5, -0.7, -1.1, -1.2], ['trend at 7 (1 2 3 4 5 6 7) down']],
    ['six rising', [0.1, -1.5, -1, -0.5, 0.1, 0.5, 1], []],
    ['equal neighbours break a trend', [-2, -1.5, -1, -1, -0.5, 0.5, 1], []],
    ['two of three beyond two sigma', [0.1, 2.2, 2.4, -0.2], ['two-of-three at 3 (2 3) up']],
    [
      'those that share a point are one signal, complete at the second',
      [0.1, 2.2, 0.3, 2.4, 2.1, 0.2, -2.5, -2.2],
      ['two-of-three at 4 (2 4 5) up', 'two-of-three at 8 (7 8) down'],
    ],
    [
      'those that share none are two',
      [2.2, 2.4, 0.1, 0.2, 2.3, 2.6],
      ['two-of-three at 2 (1 2) up', 'two-of-three at 6 (5 6) up'],
    ],
    ['with one between', [0.1, -2.2, 0.3, -2.4, 0.2], ['two-of-three at 4 (2 4) down']],
    ['on both sides of the centre', [0.1, 2.2, -2.4, 0.2], []],
    ['two of four', [0.1, 2.2, 0.1, -0.3, 2.4], []],
    ['a period without a value breaks a row', [0.5, 0.4, 0.1, null, 0.9, 1.2, 0.3, 0.2], []],
    ['and keeps two beyond two sigma apart', [0.1, 2.2, null, 2.4, 0.2], []],
    ['though not the two beside it', [0.1, null, 2.2, 2.4, 0.2], ['two-of-three at 4 (3 4) up']],
    ['nothing', [], []],
  ] as const)('%s', (_name, sigmas, expected) => {
    expect(said(sigmas)).toEqual(expected);
  });

  it('are shifts and trends only where there are no limits', () => {
    const chart: ControlChart = {
      kind: 'run',
      centre: 0.5,
      points: [0.6, 0.7, 0.6, 0.9, 0.6, 0.7, 0.8, 0.1].map((value) => ({
        value,
        lower: null,
        upper: null,
        sigmas: null,
      })),
      lowerLimitCutAt: null,
      movingRange: null,
    };
    expect(chartSignals(chart).map(({ rule }) => rule)).toEqual(['shift']);
  });
});
