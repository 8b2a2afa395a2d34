import writeXlsxFile from 'write-excel-file/node';
import type { CellObject, Row, Sheet } from 'write-excel-file/node';
import type { Block, Cell, Column, Document, Section, Table } from './document-model.js';
import { columnWidths, heldColumns } from './sheet-columns.js';

const SHELL = '#f2efe8';
const LINE = '#8b8578';
const LINE_HEIGHT_POINTS = 15;
/** A longer text is broken into lines of about so many characters. */
const MOST_ON_A_LINE = 120;

/**
 * A document as a spreadsheet: a sheet a section, numbers as unrounded numbers that are shown rounded, intervals in two
 * columns, and the title with the data cut on every sheet. Drawings are left out; their tables are there.
 */
export async function writeXlsx(document: Document): Promise<Buffer> {
  const sheets = document.sections.map((section) => sheetOf(document, section));
  return writeXlsxFile(sheets, { fontFamily: 'Calibri', fontSize: 11 }).toBuffer();
}

function sheetOf({ title, subtitle }: Document, section: Section): Sheet<never> {
  const widths = columnWidths(section);
  const data = [
    [{ value: `${title}: ${section.title}`, fontWeight: 'bold' as const, fontSize: 14 }],
    ...subtitle.map((line) => textRow(line, widths)),
    ...rowsOf(section.blocks, widths),
  ];
  return {
    sheet: section.sheetName,
    columns: widths.map((width) => ({ width })),
    data,
    stickyColumnsCount: heldColumns(section),
    stickyRowsCount: heldRows(section, data),
  };
}

/** The title stays in sight; of a list its heads too, which several tables on one sheet cannot have. */
function heldRows({ blocks }: Section, rows: readonly Row[]): number {
  const [only] = blocks;
  return only?.kind === 'table' && only.table.isList === true ? rows.length - only.table.rows.length : 1;
}

/** A sentence after a table stands apart from it, so that it is not taken for a row. */
function rowsOf(blocks: readonly Block[], widths: readonly number[]): readonly Row[] {
  return blocks.flatMap((block, index) => {
    const before = blocks[index - 1]?.kind;
    const isAfterTable = block.kind === 'paragraph' && (before === 'table' || before === 'plot');
    return [...(isAfterTable ? [[]] : []), ...blockRows(block, widths)];
  });
}

function blockRows(block: Block, widths: readonly number[]): readonly Row[] {
  switch (block.kind) {
    case 'heading':
      return [[], [{ value: block.text, fontWeight: 'bold', fontSize: 12 }]];
    case 'paragraph':
      return [textRow(block.text, widths)];
    case 'sentences':
      return block.items.map(({ text }) => textRow(text, widths));
    case 'part':
      return [
        [],
        [{ value: block.title, fontWeight: 'bold', fontSize: 12 }],
        ...rowsOf(block.blocks, widths),
      ];
    case 'table':
    case 'plot':
      return tableRows(block.table);
  }
}

/** A text across as many columns as a line of it needs. */
function textRow(text: string, widths: readonly number[]): Row {
  if (text.length <= MOST_ON_A_LINE) return [text];
  let [columns, characters] = [0, 0];
  while (columns < widths.length && characters < MOST_ON_A_LINE) {
    characters += widths[columns] ?? 0;
    columns += 1;
  }
  // Words are not cut, so that a line holds less than its characters.
  const lines = Math.ceil((text.length * 1.1) / characters);
  const across: CellObject = {
    value: text,
    columnSpan: columns,
    wrap: true,
    alignVertical: 'top',
    height: lines * LINE_HEIGHT_POINTS,
  };
  return [across, ...Array.from({ length: columns - 1 }, () => null)];
}

function tableRows({ caption, columns, rows, isList = false }: Table): readonly Row[] {
  const style: CellObject = isList ? {} : { wrap: true, alignVertical: 'top' };
  return [
    [],
    [{ value: caption, fontWeight: 'bold' }],
    columns.flatMap(headCells),
    ...(rows.length === 0
      ? [['none']]
      : rows.map((cells) => cells.flatMap((cell) => valueCells(cell, style)))),
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

function valueCells(cell: Cell, style: CellObject): (CellObject | null)[] {
  switch (cell.kind) {
    case 'text':
      return [cell.text === '' ? null : { ...style, value: cell.text, type: String }];
    case 'number':
      return [numberCell(cell.value, cell.places, style)];
    case 'interval':
      return [numberCell(cell.low, cell.places, style), numberCell(cell.high, cell.places, style)];
  }
}

/** What there is none of stays an empty cell, never 0. */
function numberCell(value: number | null, places: number, style: CellObject): CellObject | null {
  return value === null
    ? null
    : { ...style, value, type: Number, format: places === 0 ? '0' : `0.${'0'.repeat(places)}` };
}
