import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf } from '../../src/domain/attack/bounds.js';
import { sumOf } from '../../src/domain/attack/system.js';
import { everyFittingTable } from '../support/enumerate.js';
import { cellName, systemOfTable, tableWithMargins } from '../support/table-system.js';

const MOST_CELLS_HIDDEN = 8;

/** A table of up to 4 x 4 with counts up to 6, zeros shown, and some of its other cells hidden. */
const hiddenTable = fc
  .record({ rows: fc.integer({ min: 2, max: 4 }), columns: fc.integer({ min: 2, max: 4 }) })
  .chain(({ rows, columns }) =>
    fc.record({
      counts: fc.array(fc.array(fc.integer({ min: 0, max: 6 }), { minLength: columns, maxLength: columns }), {
        minLength: rows,
        maxLength: rows,
      }),
      order: fc.shuffledSubarray(
        Array.from({ length: rows * columns }, (_, index) =>
          cellName(Math.floor(index / columns), index % columns),
        ),
      ),
    }),
  )
  .map(({ counts, order }) => {
    const isZero = (name: string): boolean => {
      const [row = 0, column = 0] = name.split(',').map(Number);
      return counts[row]?.[column] === 0;
    };
    const hidden = order.filter((name) => !isZero(name)).slice(0, MOST_CELLS_HIDDEN);
    return { counts, hidden };
  });

describe('the bounds of a hidden cell', () => {
  it('are those that trying every whole table gives', () => {
    let compared = 0;
    fc.assert(
      fc.property(hiddenTable, ({ counts, hidden }) => {
        const seen = tableWithMargins(counts, new Set(hidden));
        const width = seen.columnTotals.length;
        const least = new Map<number, number>();
        const most = new Map<number, number>();
        everyFittingTable(seen, 1, (cells) => {
          cells.forEach((value, index) => {
            least.set(index, Math.min(least.get(index) ?? Infinity, value));
            most.set(index, Math.max(most.get(index) ?? -Infinity, value));
          });
        });
        const system = systemOfTable(seen, 1);
        for (const name of hidden) {
          const [row = 0, column = 0] = name.split(',').map(Number);
          const index = row * width + column;
          compared += 1;
          expect(boundsOf(system, sumOf([name]))).toEqual({ low: least.get(index), high: most.get(index) });
        }
      }),
      { numRuns: 500, seed: 20_261_126 },
    );
    expect(compared).toBeGreaterThan(1000);
  });
});
