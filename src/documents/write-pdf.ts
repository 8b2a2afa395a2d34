import { setImmediate as turn } from 'node:timers/promises';
import SvgToPdf from 'svg-to-pdfkit';
import type { Block, Document, Section } from './document-model.js';
import { writeTable } from './pdf-table.js';
import { finishPaper, MARGIN_PT, newPaper, REPORT_SHEET } from './sheet-of-paper.js';
import type { Paper, SheetStyle } from './sheet-of-paper.js';
import type { Plot } from '../plots/svg.js';

/** Points on paper for a unit of a drawing. */
const PLOT_SCALE = 0.72;

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
  paper.makeRoom(60 + roomFor(paper, inner[0]));
  paper.write(element, 'H2', title, { sizePt: 15, weight: 'bold', abovePt: 12 });
  paper.doc.outline.addItem(title);
  for (const [index, block] of inner.entries()) {
    // A heading does not stand alone at the foot of a page.
    if (isHeading(block)) paper.makeRoom(40 + roomFor(paper, inner[index + 1]));
    writeBlock(paper, element, block);
    await turn();
  }
  element.end();
}

function isHeading({ kind }: Block): boolean {
  return kind === 'heading' || kind === 'part';
}

/** What a block needs at least to begin on a page. */
function roomFor(paper: Paper, block: Block | undefined): number {
  return block?.kind === 'plot' ? block.plot.heightPx * scaleOf(paper, block.plot) + 40 : 60;
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
      writePlot(paper, parent, block.title, block.plot);
      return writeTable(paper, parent, block.table);
  }
}

function writeHeading(paper: Paper, parent: PDFKit.PDFStructureElement, text: string): void {
  paper.write(parent, 'H3', text, { sizePt: 11, weight: 'bold', abovePt: 8 });
}

function writePlot(paper: Paper, parent: PDFKit.PDFStructureElement, title: string, plot: Plot): void {
  const { doc } = paper;
  const scale = scaleOf(paper, plot);
  const [width, height] = [plot.widthPx * scale, plot.heightPx * scale];
  paper.makeRoom(height + 28);
  paper.write(parent, 'P', title, { sizePt: 9, weight: 'bold', abovePt: 4 });
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
