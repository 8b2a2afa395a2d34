import { setImmediate as turn } from 'node:timers/promises';
import type { Block, Document, Section, Table } from './document-model.js';
import { GAP_PT, roomForPlot, writePlotWithTable } from './pdf-plot.js';
import { heightOfTable, roomForTable, widthOfTable, writeTable } from './pdf-table.js';
import { columnOf, finishPaper, newPaper, REPORT_SHEET } from './sheet-of-paper.js';
import type { Paper, SheetStyle } from './sheet-of-paper.js';

/**
 * A document as a PDF: selectable text in an embedded typeface, a tree of tags with headings, tables and drawings with their
 * numbers in words, bookmarks, and on every page its number and the data cut.
 */
export async function writePdf(document: Document, style: SheetStyle = REPORT_SHEET): Promise<Buffer> {
  const paper = newPaper(document.title, style);
  const root = paper.doc.struct('Document');
  paper.doc.addStructure(root);
  paper.write(root, 'H1', document.title, { sizePt: 20, weight: 'bold' });
  for (const line of document.subtitle) paper.write(root, 'P', line, { sizePt: 10 });
  for (const section of document.sections) await writeSection(paper, root, section);
  root.end();
  return finishPaper(paper, document.footer);
}

/** Others are answered between one block and the next. */
async function writeSection(
  paper: Paper,
  root: PDFKit.PDFStructureElement,
  { title, blocks }: Section,
): Promise<void> {
  const element = paper.doc.struct('Sect');
  root.add(element);
  const inner = blocks.flatMap(unfolded);
  paper.makeRoom(40 + roomFor(paper, inner));
  paper.write(element, 'H2', title, { sizePt: 15, weight: 'bold', abovePt: 12 });
  paper.doc.outline.addItem(title);
  for (let index = 0; index < inner.length; index += 1) {
    const [block, next] = [inner[index], inner[index + 1]];
    if (block === undefined) break;
    // A heading does not stand alone at the foot of a page.
    if (isHeading(block)) paper.makeRoom(roomFor(paper, inner.slice(index)));
    if (
      block.kind === 'table' &&
      next?.kind === 'table' &&
      canStandBeside(paper, [block.table, next.table])
    ) {
      writeBeside(paper, element, [block.table, next.table]);
      index += 1;
    } else {
      writeBlock(paper, element, block);
    }
    await turn();
  }
  element.end();
}

function isHeading({ kind }: Block): boolean {
  return kind === 'heading' || kind === 'part';
}

/** What some blocks need to begin on a page: a heading and what is said below it stand with the drawing that follows. */
function roomFor(paper: Paper, [block, ...following]: readonly Block[]): number {
  const [next] = following;
  if (block?.kind === 'table' && next?.kind === 'table') {
    const both = [block.table, next.table] as const;
    if (canStandBeside(paper, both)) return heightBeside(paper, both);
  }
  switch (block?.kind) {
    case undefined:
      return 0;
    case 'heading':
    case 'part':
      return 30 + roomFor(paper, following);
    case 'paragraph':
      return Math.min(16 + roomFor(paper, following), paper.tallest - 60);
    case 'plot':
      return roomForPlot(paper, block);
    case 'table':
      return roomForTable(paper, block.table);
    case 'sentences':
      return 60;
  }
}

/** On paper nothing is folded away: a part is its heading, followed by what is in it. */
function unfolded(block: Block): readonly Block[] {
  return block.kind === 'part' ? [block, ...block.blocks.flatMap(unfolded)] : [block];
}

function writeBlock(paper: Paper, parent: PDFKit.PDFStructureElement, block: Block): void {
  switch (block.kind) {
    case 'heading':
      return writeHeading(paper, parent, block.text);
    case 'paragraph':
      return paper.write(parent, 'P', block.text, { sizePt: 9 });
    case 'sentences':
      for (const { text } of block.items) paper.write(parent, 'P', text, { sizePt: 11, abovePt: 2 });
      return;
    case 'part':
      return writeHeading(paper, parent, block.title);
    case 'table':
      return writeTable(paper, parent, block.table);
    case 'plot':
      return writePlotWithTable(paper, parent, block);
  }
}

function writeHeading(paper: Paper, parent: PDFKit.PDFStructureElement, text: string): void {
  paper.write(parent, 'H3', text, { sizePt: 11, weight: 'bold', abovePt: 8 });
}

type TwoTables = readonly [Table, Table];

/** Whether two tables fit on one sheet beside each other, which saves a sheet. */
function canStandBeside(paper: Paper, tables: TwoTables): boolean {
  const half = (paper.width - GAP_PT) / 2;
  return tables.every(
    (table) =>
      table.rows.length > 0 &&
      widthOfTable(paper, table) <= half &&
      heightOfTable(columnOf(paper, paper.left, half), table) <= paper.tallest,
  );
}

function heightBeside(paper: Paper, tables: TwoTables): number {
  const half = columnOf(paper, paper.left, (paper.width - GAP_PT) / 2);
  return Math.max(...tables.map((table) => heightOfTable(half, table)));
}

function writeBeside(paper: Paper, parent: PDFKit.PDFStructureElement, tables: TwoTables): void {
  const { doc, left, width } = paper;
  const half = (width - GAP_PT) / 2;
  const columns = [columnOf(paper, left, half), columnOf(paper, left + half + GAP_PT, half)] as const;
  paper.makeRoom(heightBeside(paper, tables));
  const top = doc.y;
  writeTable(columns[0], parent, tables[0]);
  const below = doc.y;
  doc.y = top;
  writeTable(columns[1], parent, tables[1]);
  doc.x = left;
  doc.y = Math.max(below, doc.y);
}
