import type { SeenTable } from './table-system.js';

/**
 * Every whole table that fits what is seen, found by trying all of them: no linear programme, no knowledge of the audit.
 *
 * @param visit called with each table, row by row; the array is used again
 */
export function everyFittingTable(
  seen: SeenTable,
  lowest: number,
  visit: (cells: readonly number[]) => void,
): void {
  const width = seen.columnTotals.length;
  const size = seen.rowTotals.length * width;
  const cells = Array<number>(size).fill(0);
  const rowLeft = seen.rowTotals.map((total) => total ?? Infinity);
  const columnLeft = seen.columnTotals.map((total) => total ?? Infinity);
  const step = (index: number): void => {
    if (index === size) {
      if (columnLeft.every((left) => left === 0)) visit(cells);
      return;
    }
    const [row, column] = [Math.floor(index / width), index % width];
    const shown = seen.cells[row]?.[column] ?? null;
    const most = Math.min(rowLeft[row] ?? 0, columnLeft[column] ?? 0);
    const isLastOfRow = column === width - 1;
    for (let value = shown ?? lowest; value <= (shown ?? most); value += 1) {
      if (value > most || (isLastOfRow && value !== rowLeft[row])) continue;
      cells[index] = value;
      rowLeft[row] = (rowLeft[row] ?? 0) - value;
      columnLeft[column] = (columnLeft[column] ?? 0) - value;
      step(index + 1);
      rowLeft[row] += value;
      columnLeft[column] += value;
    }
  };
  step(0);
}
