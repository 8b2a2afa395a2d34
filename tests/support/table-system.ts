import type { IntegerSystem, Known, Unknown } from '../../src/domain/attack/system.js';
import { sumOf } from '../../src/domain/attack/system.js';

/** A two-way table as an attacker sees it: a number is shown, null is hidden. */
export interface SeenTable {
  readonly cells: readonly (readonly (number | null)[])[];
  readonly rowTotals: readonly (number | null)[];
  readonly columnTotals: readonly (number | null)[];
  readonly total: number | null;
}

/** Name of a cell's unknown. */
export function cellName(row: number, column: number): Unknown {
  return `${row},${column}`;
}

/**
 * Everything that a table with margins tells.
 *
 * @param lowest what a hidden cell is known to be at least: 1 where zeros are printed
 */
export function systemOfTable(
  { cells, rowTotals, columnTotals, total }: SeenTable,
  lowest: number,
): IntegerSystem {
  const rows = rowTotals.map((_, row) => row);
  const columns = columnTotals.map((_, column) => column);
  const known: Known[] = [];
  const add = (names: readonly Unknown[], shown: number | null, least: number): void => {
    known.push({ sum: sumOf(names), low: shown ?? least, high: shown });
  };
  for (const row of rows)
    for (const column of columns) add([cellName(row, column)], cells[row]?.[column] ?? null, lowest);
  for (const row of rows)
    add(
      columns.map((column) => cellName(row, column)),
      rowTotals[row] ?? null,
      lowest,
    );
  for (const column of columns)
    add(
      rows.map((row) => cellName(row, column)),
      columnTotals[column] ?? null,
      lowest,
    );
  add(
    rows.flatMap((row) => columns.map((column) => cellName(row, column))),
    total,
    0,
  );
  return { known };
}

/** A table with its margins, some cells hidden. @param hidden as `row,column` */
export function tableWithMargins(
  counts: readonly (readonly number[])[],
  hidden: ReadonlySet<string>,
): SeenTable {
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  return {
    cells: counts.map((row, r) => row.map((count, c) => (hidden.has(cellName(r, c)) ? null : count))),
    rowTotals: counts.map(sum),
    columnTotals: (counts[0] ?? []).map((_, column) => sum(counts.map((row) => row[column] ?? 0))),
    total: sum(counts.flat()),
  };
}
