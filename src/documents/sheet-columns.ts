import type { Block, Cell, Section, Table } from './document-model.js';

/** Widths in characters. */
const NUMBER_WIDTH = 11;
const LEAST_TEXT = 12;
const LEAST_FIRST = 24;
const MOST_TEXT = 40;
/** Of the names in a list, which are not broken into lines. */
const MOST_IN_LIST = 60;
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

/** How many columns of names the longest table of a sheet begins with; of a list, whose names are long, the first alone. */
export function heldColumns({ blocks }: Section): number {
  const [longest] = blocks.flatMap(tablesOf).sort((a, b) => b.rows.length - a.rows.length);
  if (longest === undefined) return 0;
  const names = longest.columns.findIndex(({ kind }) => kind !== 'text');
  return longest.isList === true || names < 0 ? 1 : Math.min(MOST_HELD, names);
}

/** The tables of a block, those of drawings too. */
function tablesOf(block: Block): readonly Table[] {
  if (block.kind === 'part') return block.blocks.flatMap(tablesOf);
  return block.kind === 'table' || block.kind === 'plot' ? [block.table] : [];
}

function widthsOf({ columns, rows, isList = false }: Table): readonly number[] {
  return columns.flatMap(({ kind }, index) => {
    if (kind === 'interval') return [NUMBER_WIDTH, NUMBER_WIDTH];
    if (kind === 'number') return [NUMBER_WIDTH];
    const longest = Math.max(0, ...rows.map((cells) => lengthOf(cells[index])));
    const most = isList && index === 0 ? MOST_IN_LIST : MOST_TEXT;
    return [Math.min(most, Math.max(LEAST_TEXT, longest + 1))];
  });
}

function lengthOf(cell: Cell | undefined): number {
  return cell?.kind === 'text' ? cell.text.length : 0;
}
