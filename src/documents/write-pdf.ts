import { setImmediate as turn } from 'node:timers/promises';
import SvgToPdf from 'svg-to-pdfkit';
import type { Block, Document, Section, Table } from './document-model.js';
import { columnsToRead } from './columns-to-read.js';
import { heightOfTable, widthOfTable, writeTable } from './pdf-table.js';
import { columnOf, finishPaper, MARGIN_PT, newPaper, REPORT_SHEET } from './sheet-of-paper.js';
import type { Paper, SheetStyle } from './sheet-of-paper.js';
import type { Plot } from '../plots/svg.js';

/** Points on paper for a unit of a drawing: its text of 13 units is 8 pt high, as in tables. */
const PLOT_SCALE = 0.62;
/** Smaller than this its text could not be read. */
const LEAST_PLOT_SCALE = 0.54;

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
      return 16 + Math.min(roomFor(paper, following), paper.tallest / 2);
    case 'plot':
      return block.strip === undefined ? block.plot.heightPx * scaleOf(paper, block.plot) + 40 : 80;
    case 'sentences':
    case 'table':
      return 60;
  }
}

/** As large as drawings are on paper, and smaller where one would not fit on a page. */
function scaleOf({ tallest, scale }: Paper, { heightPx }: Plot): number {
  return Math.min(PLOT_SCALE * scale, (tallest - 120) / heightPx);
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

type PlotBlock = Extract<Block, { kind: 'plot' }>;

/** Between a drawing and the table beside it. */
const GAP_PT = 18;
/** A table needs at least so much beside a drawing. */
const LEAST_BESIDE_PT = 280;
const MOST_COLUMNS_BESIDE = 7;
const TITLE_PT = 28;

/** A drawing with its table: beside it where there is room, else below it and if it can be on the same sheet. */
function writePlotWithTable(paper: Paper, parent: PDFKit.PDFStructureElement, block: PlotBlock): void {
  const { doc, width, left, tallest } = paper;
  const { title, plot, table, strip } = block;
  if (strip !== undefined)
    return writeTable(paper, parent, table, { strip, alternative: `${title}. ${plot.alternative}` });
  const scale = scaleOf(paper, plot);
  const [plotWidth, plotHeight] = [plot.widthPx * scale, plot.heightPx * scale];
  const aside = columnOf(paper, left + plotWidth + GAP_PT, width - plotWidth - GAP_PT);
  const isNarrow = columnsToRead(table).length <= MOST_COLUMNS_BESIDE && aside.width >= LEAST_BESIDE_PT;
  const besideHeight = isNarrow ? heightOfTable(aside, table) : Infinity;
  if (besideHeight + TITLE_PT <= tallest) {
    paper.makeRoom(TITLE_PT + Math.max(plotHeight, besideHeight));
    writeTitle(paper, parent, title);
    const top = doc.y;
    draw(paper, parent, block, scale);
    const below = doc.y;
    doc.y = top;
    writeTable(aside, parent, table);
    doc.x = left;
    doc.y = Math.max(below, doc.y);
    return;
  }
  const room = tallest - TITLE_PT - heightOfTable(paper, table) - 8;
  const fitting = room / plot.heightPx;
  const isTogether = fitting >= LEAST_PLOT_SCALE;
  const drawn = isTogether ? Math.min(scale, fitting) : scale;
  paper.makeRoom(isTogether ? tallest - room + plot.heightPx * drawn : plotHeight + TITLE_PT);
  writeTitle(paper, parent, title);
  draw(paper, parent, block, drawn);
  writeTable(paper, parent, table);
}

function writeTitle(paper: Paper, parent: PDFKit.PDFStructureElement, title: string): void {
  paper.write(parent, 'P', title, { sizePt: 9, weight: 'bold', abovePt: 4 });
}

/** Draws from where the paper is. @returns nothing; the paper is below the drawing then */
function draw(
  { doc }: Paper,
  parent: PDFKit.PDFStructureElement,
  { title, plot }: PlotBlock,
  scale: number,
): void {
  const [width, height] = [plot.widthPx * scale, plot.heightPx * scale];
  const top = doc.y;
  const bbox: [number, number, number, number] = [MARGIN_PT, top, MARGIN_PT + width, top + height];
  const figure = { alt: `${title}. ${plot.alternative}`, bbox };
  // The drawing names its own size, which would stand before the one on paper.
  const svg = plot.svg.replace(/ width="[\d.]+" height="[\d.]+"/, '');
  parent.add(
    doc.struct('Figure', figure, () => {
      SvgToPdf(doc, svg, MARGIN_PT, top, {
        width,
        height,
        assumePt: true,
        fontCallback: (_family, isBold) => (isBold ? 'bold' : 'regular'),
      });
    }),
  );
  doc.x = MARGIN_PT;
  doc.y = top + height + 8;
}
