import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hideIn } from '../../../src/domain/release/hiding/hide.js';
import type { CountedTable, IssuedTable } from '../../../src/domain/release/issued.js';
import { countOf } from '../../../src/domain/release/issued.js';
import { DEFAULT_DISCLOSURE, checkDisclosure, policyOf } from '../../../src/domain/release/policy.js';
import { hiddenForItself, meaningOf, protectCount } from '../../../src/domain/release/protected-count.js';
import { boundsOf } from '../../../src/domain/attack/bounds.js';
import { sumOf } from '../../../src/domain/attack/system.js';
import { systemOfTable } from '../../support/table-system.js';

const ROUNDED = policyOf(DEFAULT_DISCLOSURE, 'rounded');
const EXACT = policyOf(DEFAULT_DISCLOSURE, 'exact');

/** A one-way table with a category for each count. */
function oneWay(counts: readonly number[]): CountedTable {
  const ids = counts.map((_, index) => `c${index}`);
  return {
    tableId: 'source',
    universe: 'received',
    codeListId: 'fine',
    counts: Object.fromEntries(ids.map((id, index) => [id, counts[index] ?? 0])),
    cells: ids.map((id) => ({
      id,
      words: id,
      of: [id],
      within: null,
      role: 'cell',
      row: null,
      column: null,
    })),
    columnsOf: null,
  };
}

/** A two-way table with its margins. */
function twoWay(counts: readonly (readonly number[])[]): CountedTable {
  const rows = counts.map((_, index) => `r${index}`);
  const columns = (counts[0] ?? []).map((_, index) => `c${index}`);
  const cell = (row: string | null, column: string | null) => ({
    id: `${row ?? 'all'}|${column ?? 'all'}`,
    words: '',
    of: rows
      .filter((each) => row === null || each === row)
      .flatMap((r) => columns.filter((each) => column === null || each === column).map((c) => `${r}|${c}`)),
    within: null,
    role:
      row === null ? ('column-total' as const) : column === null ? ('row-total' as const) : ('cell' as const),
    row,
    column,
  });
  return {
    tableId: 'completion-by-deprivation',
    universe: 'started',
    codeListId: 'fine',
    counts: Object.fromEntries(
      rows.flatMap((r, i) => columns.map((c, j) => [`${r}|${c}`, counts[i]?.[j] ?? 0])),
    ),
    cells: [
      ...rows.flatMap((row) => [...columns.map((column) => cell(row, column)), cell(row, null)]),
      ...columns.map((column) => cell(null, column)),
    ],
    columnsOf: 'completion',
  };
}

const hiddenIds = (table: IssuedTable): readonly string[] => Object.keys(table.hidden).sort();

describe('a count', () => {
  it.each([
    [1, 'small'],
    [7, 'small'],
    [8, null],
    [0, null],
  ])('of %i in a rounded release is hidden for itself: %s', (count, because) => {
    expect(hiddenForItself(count, ROUNDED)).toBe(because);
  });

  it('that is small is never shown, whoever asks', () => {
    expect(() => protectCount(3, EXACT, null)).toThrow(RangeError);
    expect(protectCount(3, EXACT, 'small')).toEqual({ kind: 'hidden' });
  });

  // Handbook on Statistical Disclosure Control, online 2nd edition, chapter 5, section 5.5: conventional rounding to base 5.
  it.each([
    [0, 0],
    [1, 0],
    [3, 5],
    [12, 10],
    [20, 20],
    [6, 5],
    [32, 30],
    [16, 15],
    [23, 25],
    [39, 40],
  ])('of %i rounds to %i', (count, rounded) => {
    const all = { ...ROUNDED, hidesBelow: 1 };
    expect(protectCount(count, all, null)).toEqual({ kind: 'shown', value: rounded });
  });

  it('that is shown means the counts that round to it, and none that would be hidden', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 500 }), fc.constantFrom(5, 10), (count, roundingBase) => {
        const policy = { ...ROUNDED, roundingBase };
        const shown = protectCount(count, policy, null);
        const value = shown.kind === 'shown' ? shown.value : NaN;
        const { low, high } = meaningOf(value, policy);
        const fitting = Array.from({ length: 600 }, (_, each) => each).filter((each) => {
          if (hiddenForItself(each, policy) !== null) return false;
          const other = protectCount(each, policy, null);
          return other.kind === 'shown' && other.value === value;
        });
        expect([low, high]).toEqual([fitting[0], fitting[fitting.length - 1]]);
      }),
    );
  });
});

describe('settings of disclosure', () => {
  it('are checked one by one, each with its field', () => {
    expect(checkDisclosure(DEFAULT_DISCLOSURE)).toEqual([]);
    const faults = checkDisclosure({ ...DEFAULT_DISCLOSURE, exactHidesBelow: 2, minimumForMeans: 3 });
    expect(faults.map(({ pointer }) => pointer)).toEqual([
      '/disclosure/exactHidesBelow',
      '/disclosure/minimumForMeans',
    ]);
  });

  it('cannot ask for more width than a hidden count can have', () => {
    const faults = checkDisclosure({ ...DEFAULT_DISCLOSURE, roundedHidesBelow: 6 });
    expect(faults.map(({ pointer }) => pointer)).toEqual(['/disclosure/minimumWidth']);
  });
});

describe('a one-way table of an exact release', () => {
  it('hides another count with a single small one', () => {
    expect(hiddenIds(hideIn(oneWay([2, 12, 30, 40]), EXACT))).toEqual(['c0', 'c1']);
  });

  it('hides a third where two small ones come to too little', () => {
    expect(hiddenIds(hideIn(oneWay([1, 1, 20, 18]), EXACT))).toEqual(['c0', 'c1', 'c3']);
  });

  it('hides nothing where nothing is small, and never a zero', () => {
    expect(hiddenIds(hideIn(oneWay([0, 12, 30]), EXACT))).toEqual([]);
    expect(hiddenIds(hideIn(oneWay([0, 2, 30]), EXACT))).toEqual(['c1', 'c2']);
  });
});

describe('a two-way table of an exact release', () => {
  const TRAP = [
    [3, 9, 20, 31],
    [8, 4, 2, 40],
    [25, 30, 6, 11],
    [33, 28, 12, 4],
  ];

  /** The bounds of every small cell, by the printed table alone. */
  const widths = (table: IssuedTable, size: { rows: number; columns: number }): readonly number[] => {
    const shown = (row: string | null, column: string | null): number | null => {
      const cell = table.cells.find((each) => each.row === row && each.column === column);
      return cell === undefined || cell.id in table.hidden ? null : countOf(table, cell);
    };
    const rows = Array.from({ length: size.rows }, (_, index) => `r${index}`);
    const columns = Array.from({ length: size.columns }, (_, index) => `c${index}`);
    const system = systemOfTable(
      {
        cells: rows.map((row) => columns.map((column) => shown(row, column))),
        rowTotals: rows.map((row) => shown(row, null)),
        columnTotals: columns.map((column) => shown(null, column)),
        total: Object.values(table.counts).reduce((a, b) => a + b, 0),
      },
      1,
    );
    return table.cells
      .filter((cell) => cell.role === 'cell' && hiddenForItself(countOf(table, cell), EXACT) !== null)
      .map((cell) => {
        const name = cell.id.replaceAll(/[rc]/g, '').replace('|', ',');
        const { low, high } = boundsOf(system, sumOf([name]));
        return (high ?? Infinity) - low;
      });
  };

  it('leaves no small count narrower than the least width, in the trap of two hidden in every line', () => {
    const table = hideIn(twoWay(TRAP), EXACT);
    const found = widths(table, { rows: 4, columns: 4 });
    expect(found).toHaveLength(4);
    expect(Math.min(...found)).toBeGreaterThanOrEqual(5);
  });

  it('needs every cell that it hides for others: with one of them shown a small count can be worked out', () => {
    const table = hideIn(twoWay(TRAP), EXACT);
    const others = Object.entries(table.hidden).filter(([, because]) => because === 'protects-others');
    expect(others.length).toBeGreaterThan(0);
    for (const [id] of others) {
      const hidden = Object.fromEntries(Object.entries(table.hidden).filter(([each]) => each !== id));
      expect(Math.min(...widths({ ...table, hidden }, { rows: 4, columns: 4 }))).toBeLessThan(5);
    }
  });

  it('leaves none in random tables', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.integer({ min: 0, max: 25 }), { minLength: 3, maxLength: 3 }), {
          minLength: 4,
          maxLength: 4,
        }),
        (counts) => {
          const table = hideIn(twoWay(counts), EXACT);
          const found = widths(table, { rows: 4, columns: 3 });
          const total = counts.flat().reduce((a, b) => a + b, 0);
          const isHopeless = total < 20 || Object.keys(table.hidden).length >= table.cells.length - 4;
          if (!isHopeless) expect(Math.min(5, ...found)).toBe(5);
        },
      ),
      { numRuns: 60, seed: 11 },
    );
  });
});
