// Source: Handbook on Statistical Disclosure Control, online 2nd edition: chapter 4, Example 1a (one hidden cell: 998) and
// Example 3 (after Geurts 1992, Table 10: x11 is 3 to 6); chapter 5 (differencing of two overlapping releases).
// The further traps are worked by hand: the comment beside each says how. All exact.
import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../src/domain/attack/bounds.js';
import { sumOf } from '../../src/domain/attack/system.js';
import type { IntegerSystem } from '../../src/domain/attack/system.js';
import { cellName, systemOfTable, tableWithMargins } from '../support/table-system.js';

const boundsOfCell = (system: IntegerSystem, row: number, column: number): readonly (number | null)[] => {
  const { low, high } = boundsOf(system, sumOf([cellName(row, column)]));
  return [low, high];
};

describe('what an attacker can tell of a hidden cell', () => {
  it('is an interval in the table after Geurts', () => {
    const system = systemOfTable(
      {
        cells: [
          [null, null],
          [null, null],
          [3, 3],
        ],
        rowTotals: [7, 3, 6],
        columnTotals: [9, 7],
        total: 16,
      },
      0,
    );
    expect(boundsOfCell(system, 0, 0)).toEqual([3, 6]);
    expect(boundsOfCell(system, 0, 1)).toEqual([1, 4]);
    expect(boundsOfCell(system, 1, 0)).toEqual([0, 3]);
    expect(boundsOfCell(system, 1, 1)).toEqual([0, 3]);
  });

  it('is the count itself where one cell of a total is hidden', () => {
    const system: IntegerSystem = {
      known: [
        { sum: sumOf(['a']), low: 47_600, high: 47_600 },
        { sum: sumOf(['b']), low: 8_002, high: 8_002 },
        { sum: sumOf(['a', 'b', 'hidden']), low: 56_600, high: 56_600 },
      ],
    };
    expect(boundsOf(system, sumOf(['hidden']))).toEqual({ low: 998, high: 998 });
  });

  // 40 - 20 - 18 = 2 for two cells of which neither is 0.
  it.each([
    { lowest: 1, interval: { low: 1, high: 1 } },
    { lowest: 0, interval: { low: 0, high: 2 } },
  ])(
    'is exact where two hidden cells come to 2 and zeros are shown (at least $lowest)',
    ({ lowest, interval }) => {
      const system: IntegerSystem = {
        known: [
          { sum: sumOf(['a']), low: lowest, high: null },
          { sum: sumOf(['b']), low: lowest, high: null },
          { sum: sumOf(['a', 'b']), low: 2, high: 2 },
        ],
      };
      expect(boundsOf(system, sumOf(['a']))).toEqual(interval);
    },
  );

  // Rows 0 and 1 less columns 0 and 1 leave cell (1,2), though two are hidden in every row and column.
  it('may be exact although two are hidden in every row and column', () => {
    const hidden = new Set(['0,0', '0,1', '1,0', '1,1', '1,2', '2,2', '2,3', '3,2', '3,3']);
    const table = tableWithMargins(
      [
        [3, 9, 20, 31],
        [8, 4, 2, 40],
        [25, 30, 6, 11],
        [33, 28, 12, 4],
      ],
      hidden,
    );
    const system = systemOfTable(table, 0);
    expect(boundsOfCell(system, 1, 2)).toEqual([2, 2]);
    expect(boundsOfCell(system, 0, 0)).toEqual([0, 11]);
    expect(boundsOfCell(system, 0, 1)).toEqual([1, 12]);
    expect(boundsOfCell(system, 2, 2)).toEqual([2, 17]);
    expect(boundsOfCell(system, 3, 3)).toEqual([0, 15]);
  });

  // 10 means 8 to 12, 15 means 13 to 17, 20 means 18 to 22: 22 - 8 - 13 = 1 is the only way to have 1 or more.
  it('may be exact although everything shown is rounded to 5', () => {
    const system: IntegerSystem = {
      known: [
        { sum: sumOf(['a']), low: 8, high: 12 },
        { sum: sumOf(['b']), low: 13, high: 17 },
        { sum: sumOf(['hidden']), low: 1, high: 7 },
        { sum: sumOf(['a', 'b', 'hidden']), low: 18, high: 22 },
      ],
    };
    expect(boundsOf(system, sumOf(['hidden']))).toEqual({ low: 1, high: 1 });
  });

  // The first quarter is hidden, the year to date less the second quarter gives it back: 31 - 28.
  it('is exact where a year to date stands beside a quarter', () => {
    const system: IntegerSystem = {
      known: [
        { sum: sumOf(['first']), low: 1, high: null },
        { sum: sumOf(['second']), low: 28, high: 28 },
        { sum: sumOf(['first', 'second']), low: 31, high: 31 },
      ],
    };
    expect(boundsOf(system, sumOf(['first']))).toEqual({ low: 3, high: 3 });
  });
});
