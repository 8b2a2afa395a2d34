import writeXlsxFile from 'write-excel-file/node';
import type { CellObject, Row, Sheet } from 'write-excel-file/node';
import type { Block, Cell, Column, Document, Section, Table } from './document-model.js';

const SHELL = '#f2efe8';
const LINE = '#8b8578';
const FIRST_WIDTH = 44;
const TEXT_WIDTH = 26;
const NUMBER_WIDTH = 11;
/** Columns beyond the widest table keep the program's own width. */
const MOST_COLUMNS = 30;

/**
 * A document as a spreadsheet: a sheet a section, numbers as unrounded numbers that are shown rounded, intervals in two
 * columns, and the title with the data cut on every sheet. Drawings are left out; their tables are there.
 */
export async function writeXlsx(document: Document): Promise<Buffer> {
  const sheets = document.sections.map((section) => sheetOf(document, section));
  return writeXlsxFile(sheets, { fontFamily: 'Calibri', fontSize: 11 }).toBuffer();
}

function sheetOf({ title, subtitle }: Document, section: Section): Sheet<never> {
  return {
    sheet: section.sheetName,
    columns: widths(section),
    data: [
      [{ value: `${title}: ${section.title}`, fontWeight: 'bold', fontSize: 14 }],
      ...subtitle.map((line): Row => [line]),
      ...rowsOf(section.blocks),
    ],
  };
}

/** A sentence after a table stands apart from it, so that it is not taken for a row. */
function rowsOf(blocks: readonly Block[]): readonly Row[] {
  return blocks.flatMap((block, index) => {
    const before = blocks[index - 1]?.kind;
    const isAfterTable = block.kind === 'paragraph' && (before === 'table' || before === 'plot');
    return [...(isAfterTable ? [[]] : []), ...blockRows(block)];
  });
}

function blockRows(block: Block): readonly Row[] {
  switch (block.kind) {
    case 'heading':
      return [[], [{ value: block.text, fontWeight: 'bold', fontSize: 12 }]];
    case 'paragraph':
      return [[block.text]];
    case 'sentences':
      return block.items.map(({ text }) => [text]);
    case 'part':
      return [[], [{ value: block.title, fontWeight: 'bold', fontSize: 12 }], ...rowsOf(block.blocks)];
    case 'table':
    case 'plot':
      return tableRows(block.table);
  }
}

function tableRows({ caption, columns, rows }: Table): readonly Row[] {
  return [
    [],
    [{ value: caption, fontWeight: 'bold' }],
    columns.flatMap(headCells),
    ...(rows.length === 0 ? [['none']] : rows.map((cells) => cells.flatMap(valueCells))),
  ];
}

function headCells({ head, kind }: Column): CellObject[] {
  const heads = kind === 'interval' ? [`${head}: low`, `${head}: high`] : [head];
  return heads.map((value) => ({
    value,
    fontWeight: 'bold',
    backgroundColor: SHELL,
    bottomBorderColor: LINE,
    bottomBorderStyle: 'thin',
    wrap: true,
    alignVertical: 'top',
    align: kind === 'text' ? 'left' : 'right',
  }));
}

function valueCells(cell: Cell): (CellObject | null)[] {
  switch (cell.kind) {
    case 'text':
      return [cell.text === '' ? null : { value: cell.text, type: String }];
    case 'number':
      return [numberCell(cell.value, cell.places)];
    case 'interval':
      return [numberCell(cell.low, cell.places), numberCell(cell.high, cell.places)];
  }
}

/** What there is none of stays an empty cell, never 0. */
function numberCell(value: number | null, places: number): CellObject | null {
  return value === null
    ? null
    : { value, type: Number, format: places === 0 ? '0' : `0.${'0'.repeat(places)}` };
}

function widths({ blocks }: Section): { readonly width: number }[] {
  const found: { width: number }[] = [{ width: FIRST_WIDTH }];
  for (const { columns } of blocks.flatMap(tablesOf)) {
    const kinds = columns.flatMap(({ kind }) => (kind === 'interval' ? [kind, kind] : [kind]));
    kinds.slice(0, MOST_COLUMNS).forEach((kind, index) => {
      const width = kind === 'text' ? TEXT_WIDTH : NUMBER_WIDTH;
      found[index] = { width: Math.max(found[index]?.width ?? 0, width) };
    });
  }
  return found;
}

function tablesOf(block: Block): readonly Table[] {
  if (block.kind === 'part') return block.blocks.flatMap(tablesOf);
  return block.kind === 'table' || block.kind === 'plot' ? [block.table] : [];
}
