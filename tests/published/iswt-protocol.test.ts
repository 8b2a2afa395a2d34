// Sources: Singh SJ and others 1992, Thorax 47:1019 (twelve levels); Holland AE and others 2014, Eur Respir J 44:1428,
// Table 7 (first level 20 s for 10 m); Bradley J and others 1999, Thorax 54:437 (top speed 2.37 m/s). Shuttles in each level
// were nowhere read: they follow from one minute at each speed.
// Tolerance: half a unit of the last decimal given (two decimals).
import { describe, expect, it } from 'vitest';
import {
  ISWT_LEVELS,
  ISWT_MAX_DISTANCE_M,
  levelAtDistanceM,
} from '../../src/domain/prediction/iswt-protocol.js';

// level, shuttles, m/s, km/h, mph, s per shuttle, shuttles and metres at the end of the level
const TABLE = [
  [1, 3, 0.5, 1.8, 1.12, 20, 3, 30],
  [2, 4, 0.67, 2.41, 1.5, 15, 7, 70],
  [3, 5, 0.84, 3.02, 1.88, 12, 12, 120],
  [4, 6, 1.01, 3.64, 2.26, 10, 18, 180],
  [5, 7, 1.18, 4.25, 2.64, 8.57, 25, 250],
  [6, 8, 1.35, 4.86, 3.02, 7.5, 33, 330],
  [7, 9, 1.52, 5.47, 3.4, 6.67, 42, 420],
  [8, 10, 1.69, 6.08, 3.78, 6, 52, 520],
  [9, 11, 1.86, 6.7, 4.16, 5.45, 63, 630],
  [10, 12, 2.03, 7.31, 4.54, 5, 75, 750],
  [11, 13, 2.2, 7.92, 4.92, 4.62, 88, 880],
  [12, 14, 2.37, 8.53, 5.3, 4.29, 102, 1020],
] as const;
const HALF_UNIT = 0.005 + 1e-9;

describe('incremental shuttle walk protocol', () => {
  it.each(TABLE)(
    'level %i: %i shuttles at %f m/s',
    (level, shuttles, mPerS, kmPerH, mph, secondsPerShuttle, cumulativeShuttles, cumulativeM) => {
      const found = ISWT_LEVELS[level - 1];
      if (found === undefined) throw new Error('no such level');
      expect(found).toMatchObject({
        level,
        shuttles,
        speedMPerS: mPerS,
        cumulativeShuttles,
        cumulativeDistanceM: cumulativeM,
      });
      expect(Math.abs(found.speedKmPerH - kmPerH)).toBeLessThanOrEqual(HALF_UNIT);
      // 1 mile = 1.609344 km
      expect(Math.abs(found.speedKmPerH / 1.609344 - mph)).toBeLessThanOrEqual(HALF_UNIT);
      expect(Math.abs(found.secondsPerShuttle - secondsPerShuttle)).toBeLessThanOrEqual(HALF_UNIT);
    },
  );

  it('has twelve levels of which level n holds n + 2 shuttles, 102 shuttles and 1020 m in all', () => {
    expect(ISWT_LEVELS.map((level) => level.shuttles)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14]);
    expect(ISWT_MAX_DISTANCE_M).toBe(1020);
  });

  it('takes 20 s for the first shuttles, so 0.50 m/s and not the 1.2 mph of pages for patients', () => {
    expect(ISWT_LEVELS[0]).toMatchObject({ secondsPerShuttle: 20, speedMPerS: 0.5 });
  });

  it.each([
    { distanceM: 10, level: 1, shuttlesInLevel: 1, isLevelComplete: false },
    { distanceM: 30, level: 1, shuttlesInLevel: 3, isLevelComplete: true },
    { distanceM: 40, level: 2, shuttlesInLevel: 1, isLevelComplete: false },
    { distanceM: 70, level: 2, shuttlesInLevel: 4, isLevelComplete: true },
    { distanceM: 170, level: 4, shuttlesInLevel: 5, isLevelComplete: false },
    { distanceM: 250, level: 5, shuttlesInLevel: 7, isLevelComplete: true },
    { distanceM: 260, level: 6, shuttlesInLevel: 1, isLevelComplete: false },
    { distanceM: 1010, level: 12, shuttlesInLevel: 13, isLevelComplete: false },
    { distanceM: 1020, level: 12, shuttlesInLevel: 14, isLevelComplete: true },
  ])(
    'a walk of $distanceM m ends in level $level after $shuttlesInLevel shuttles',
    ({ distanceM, level, shuttlesInLevel, isLevelComplete }) => {
      expect(levelAtDistanceM(distanceM)).toMatchObject({
        level: { level },
        shuttlesInLevel,
        isLevelComplete,
      });
    },
  );

  it('knows no level at 0 m: no shuttle was completed', () => {
    expect(levelAtDistanceM(0)).toBeNull();
  });

  it.each([-10, 5, 255, 1030, 1500, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d m', (distanceM) => {
    expect(() => levelAtDistanceM(distanceM)).toThrow(RangeError);
  });
});
