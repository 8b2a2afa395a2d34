import { columnsToRead } from '../../../documents/columns-to-read.js';
import type { Block, Cell, Section, Table } from '../../../documents/document-model.js';
import { MARK_WORDS, NONE } from '../text-numbers.js';

/** The cell of a number that rests on so many: where it rests on nobody, and there is no number, it says so. */
export function orNone(n: number, cell: Cell): Cell {
  return n === 0 && isEmpty(cell) ? { ...cell, text: NONE } : cell;
}

function isEmpty(cell: Cell): boolean {
  return (cell.kind === 'number' && cell.value === null) || (cell.kind === 'interval' && cell.low === null);
}

/** A section with the marks of each of its tables explained below it. */
export function withMarksExplained(section: Section): Section {
  return { ...section, blocks: section.blocks.map(explained) };
}

function explained(block: Block): Block {
  if (block.kind === 'part') return { ...block, blocks: block.blocks.map(explained) };
  return block.kind === 'table' || block.kind === 'plot'
    ? { ...block, table: tableExplained(block.table) }
    : block;
}

function tableExplained(table: Table): Table {
  const shown = columnsToRead(table);
  const cells = table.rows.flatMap((row) => shown.map((index) => row[index]));
  const texts = new Set(cells.flatMap((cell) => (cell !== undefined && isEmpty(cell) ? [cell.text] : [])));
  const marks = Object.entries(MARK_WORDS).filter(([mark]) => texts.has(mark));
  if (marks.length === 0) return table;
  const words = `${marks.map(([mark, meaning]) => `${mark}: ${meaning}`).join('; ')}.`;
  return { ...table, note: table.note === undefined ? words : `${table.note} ${words}` };
}
