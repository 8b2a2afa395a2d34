import type { Block, Cell, Section, Table } from './document-model.js';

/** Widths in characters. */
const NUMBER_WIDTH = 11;
const LEAST_TEXT = 12;
const LEAST_FIRST = 24;
const MOST_TEXT = 40;
/** Columns beyond these keep the program's own width. */
const MOST_COLUMNS = 30;
/** As many columns with the names of rows stay in sight while somebody looks to the right: there must be room beside them. */
const MOST_HELD = 2;

/** How wide each column of a sheet is, so that every table on it can be read: numbers alike, texts by the longest. */
export function columnWidths({ blocks }: Section): readonly number[] {
  const found: number[] = [LEAST_FIRST];
  for (const table of blocks.flatMap(tablesOf)) {
    widthsOf(table)
      .slice(0, MOST_COLUMNS)
      .forEach((width, index) => {
        found[index] = Math.max(found[index] ?? 0, width);
      });
  }
  return found;
}

/** How many columns of names the tables of a sheet begin with. */
export function heldColumns({ blocks }: Section): number {
  const names = blocks.flatMap(tablesOf).map(({ columns }) => {
    const numbers = columns.findIndex(({ kind }) => kind !== 'text');
    return numbers < 0 ? 1 : numbers;
  });
  return Math.min(MOST_HELD, Math.max(0, ...names));
}

/** The tables of a block, those of drawings too. */
export function tablesOf(block: Block): readonly Table[] {
  if (block.kind === 'part') return block.blocks.flatMap(tablesOf);
  return block.kind === 'table' || block.kind === 'plot' ? [block.table] : [];
}

function widthsOf({ columns, rows }: Table): readonly number[] {
  return columns.flatMap(({ kind }, index) => {
    if (kind === 'interval') return [NUMBER_WIDTH, NUMBER_WIDTH];
    if (kind === 'number') return [NUMBER_WIDTH];
    const longest = Math.max(0, ...rows.map((cells) => lengthOf(cells[index])));
    return [Math.min(MOST_TEXT, Math.max(LEAST_TEXT, longest + 1))];
  });
}

function lengthOf(cell: Cell | undefined): number {
  return cell?.kind === 'text' ? cell.text.length : 0;
}
