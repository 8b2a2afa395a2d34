// Source: Singh SJ and others 1992, Thorax 47:1019, doi 10.1136/thx.47.12.1019: twelve levels (read).
// FROM MEMORY: shuttles in each level (level + 2), which the printed speeds force, and the stop of the endurance test at 20 min.
// Tolerance: none. Distances added up by hand: 3 + 4 + 5 + ... shuttles of 10 m.
import { describe, expect, it } from 'vitest';
import { findWalkTest } from '../../src/domain/measures/catalogue.js';
import { distanceToLevel, shuttlesToDistanceM } from '../../src/domain/measures/shuttles.js';
import { publishedRange } from '../support/published.js';

describe('limits of the shuttle walk tests', () => {
  publishedRange('incremental-shuttle-walk-distance', {
    min: 0,
    max: 1020,
    step: 10,
    usual: [20, 800],
    betterWhen: 'higher',
    status: 'from-memory',
  });
  publishedRange('incremental-shuttle-walk-15-level-distance', {
    min: 0,
    max: 1500,
    step: 10,
    usual: [20, 1200],
    betterWhen: 'higher',
    status: 'from-memory',
  });
  publishedRange('endurance-shuttle-walk-time', {
    min: 0,
    max: 1200,
    step: 1,
    usual: [30, 1199],
    betterWhen: 'higher',
    status: 'from-memory',
  });

  it.each([
    [1, 3, 30],
    [2, 4, 70],
    [3, 5, 120],
    [4, 6, 180],
    [5, 7, 250],
    [6, 8, 330],
    [7, 9, 420],
    [8, 10, 520],
    [9, 11, 630],
    [10, 12, 750],
    [11, 13, 880],
    [12, 14, 1020],
    [13, 15, 1170],
    [14, 16, 1330],
    [15, 17, 1500],
  ])('level %s ends after %s shuttles at %s m', (level, shuttles, distanceM) => {
    expect(shuttlesToDistanceM(level, shuttles, 15)).toEqual({ kind: 'distance', distanceM });
    expect(distanceToLevel(distanceM, 15)).toEqual({ kind: 'level', level, shuttlesInLevel: shuttles });
  });

  it('stops the incremental tests where their levels end, and the endurance test at 1200 s', () => {
    expect(findWalkTest('incremental-shuttle-walk')).toMatchObject({ levels: 12, ceiling: 1020 });
    expect(findWalkTest('incremental-shuttle-walk-15-level')).toMatchObject({ levels: 15, ceiling: 1500 });
    expect(findWalkTest('endurance-shuttle-walk')).toMatchObject({ levels: null, ceiling: 1200 });
  });

  it('keeps the two incremental tests apart as tests and as measures', () => {
    const [short, long] = ['incremental-shuttle-walk', 'incremental-shuttle-walk-15-level'].map(findWalkTest);
    expect(short?.measure.id).not.toBe(long?.measure.id);
    expect(long?.measure.thresholds).toEqual([]);
  });
});
