import { describe, expect, it } from 'vitest';
import { distanceToLevel, shuttlesToDistanceM } from '../../../src/domain/measures/shuttles.js';

describe('shuttles to distance', () => {
  it('counts the shuttles of the levels before', () => {
    // 3 + 4 + 5 + 6 = 18 shuttles before level 5, and two in it.
    expect(shuttlesToDistanceM(5, 2)).toEqual({ kind: 'distance', distanceM: 200 });
  });

  it.each([
    [0, 0],
    [1, 0],
  ])('level %s with %s shuttles is 0 m, a result', (level, shuttles) => {
    expect(shuttlesToDistanceM(level, shuttles)).toEqual({ kind: 'distance', distanceM: 0 });
  });

  it.each([
    [13, 1],
    [-1, 0],
    [1.5, 0],
    [Number.NaN, 0],
    [0, 1],
    [1, 4],
    [12, 15],
    [3, -1],
    [3, 2.5],
  ])('refuses level %s with %s shuttles', (level, shuttles) => {
    expect(shuttlesToDistanceM(level, shuttles).kind).toBe('refused');
  });

  it('says how many shuttles the level has', () => {
    expect(shuttlesToDistanceM(4, 9)).toEqual({
      kind: 'refused',
      message: 'Level 4 has 6 shuttles: give a whole number from 0 to 6; you gave 9.',
    });
  });

  it('takes levels 13 to 15 in the longer test only', () => {
    expect(shuttlesToDistanceM(13, 1).kind).toBe('refused');
    expect(shuttlesToDistanceM(13, 1, 15)).toEqual({ kind: 'distance', distanceM: 1030 });
  });
});

describe('distance to level', () => {
  it.each([
    [0, 1, 0],
    [10, 1, 1],
    [30, 1, 3],
    [40, 2, 1],
    [200, 5, 2],
    [250, 5, 7],
    [260, 6, 1],
    [1020, 12, 14],
  ])('%s m ended in level %s after %s shuttles', (distanceM, level, shuttlesInLevel) => {
    expect(distanceToLevel(distanceM)).toEqual({ kind: 'level', level, shuttlesInLevel });
  });

  it.each([-10, 5, 475, 1030, Number.NaN, Number.POSITIVE_INFINITY])('refuses %s m', (distanceM) => {
    expect(distanceToLevel(distanceM).kind).toBe('refused');
  });
});
