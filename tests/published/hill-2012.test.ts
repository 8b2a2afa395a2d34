// Source: Hill K and others 2012, Respir Med 106:1665, abstract: endurance speed is 85 % of the peak speed of the
// incremental test. What counts as peak speed in an incomplete level is not stated there: common practice, no source.
// Expected: 0.85 x speed of the level. Tolerance: half a unit of the second decimal.
import { describe, expect, it } from 'vitest';
import { ENDURANCE_SPEED_CITATIONS, enduranceSpeed } from '../../src/domain/prediction/endurance-speed.js';

describe('endurance walking speed, Hill 2012', () => {
  it.each([
    { distanceM: 30, level: 1, kmPerH: 1.53 },
    { distanceM: 70, level: 2, kmPerH: 2.05 },
    { distanceM: 120, level: 3, kmPerH: 2.57 },
    { distanceM: 180, level: 4, kmPerH: 3.09 },
    { distanceM: 250, level: 5, kmPerH: 3.61 },
    { distanceM: 330, level: 6, kmPerH: 4.13 },
    { distanceM: 420, level: 7, kmPerH: 4.65 },
    { distanceM: 520, level: 8, kmPerH: 5.17 },
    { distanceM: 630, level: 9, kmPerH: 5.69 },
    { distanceM: 750, level: 10, kmPerH: 6.21 },
    { distanceM: 880, level: 11, kmPerH: 6.73 },
    { distanceM: 1020, level: 12, kmPerH: 7.25 },
  ])('level $level: $kmPerH km/h', ({ distanceM, level, kmPerH }) => {
    const speed = enduranceSpeed(distanceM);
    if (speed.kind !== 'derived') throw new Error(speed.words);
    expect(Math.abs(speed.enduranceKmPerH - kmPerH)).toBeLessThanOrEqual(0.005 + 1e-9);
    expect(speed.peakLevel.level).toBe(level);
    expect(speed.isPeakLevelComplete).toBe(true);
  });

  it('takes the level of the last whole shuttle as peak and tells that it is incomplete', () => {
    // 260 m: one shuttle of level 6; 0.85 x 4.86 km/h = 4.131 km/h
    const speed = enduranceSpeed(260);
    expect(speed).toMatchObject({ kind: 'derived', peakLevel: { level: 6 }, isPeakLevelComplete: false });
    expect(speed.kind === 'derived' ? speed.enduranceKmPerH : Number.NaN).toBeCloseTo(4.131, 9);
    expect(ENDURANCE_SPEED_CITATIONS.map((citation) => citation.status)).toEqual([
      'retrieved',
      'common-practice',
    ]);
  });

  it('derives no speed from a walk without a completed shuttle', () => {
    expect(enduranceSpeed(0)).toMatchObject({ kind: 'not-derived' });
  });
});
