import SvgToPdf from 'svg-to-pdfkit';
import { columnsToRead } from './columns-to-read.js';
import type { Block, Strip } from './document-model.js';
import type { TableStrip } from './pdf-table-layout.js';
import { heightOfTable, roomForTable, writeTable } from './pdf-table.js';
import { columnOf, MARGIN_PT } from './sheet-of-paper.js';
import type { Paper } from './sheet-of-paper.js';
import type { Plot } from '../plots/svg.js';

/** Points on paper for a unit of a drawing: its text of 13 units is 8 pt high, as in tables. */
const PLOT_SCALE = 0.62;
/** Smaller than this its text could not be read. */
const LEAST_PLOT_SCALE = 0.54;

export type PlotBlock = Extract<Block, { kind: 'plot' }>;

/** Between a drawing and the table beside it, and between two tables. */
export const GAP_PT = 18;
/** A table needs at least so much beside a drawing. */
const LEAST_BESIDE_PT = 280;
const MOST_COLUMNS_BESIDE = 7;
/** The size of a title, and what stands above and below it. */
const TITLE_PT = 9;
const ROUND_TITLE_PT = 17;

/** As large as drawings are on paper, and smaller where one would not fit on a page. */
function scaleOf({ tallest, scale }: Paper, { heightPx }: Plot): number {
  return Math.min(PLOT_SCALE * scale, (tallest - 120) / heightPx);
}

/** How a drawing stands to its table: beside it where there is room, else above it and if it can be on the same sheet. */
interface PlotPlace {
  readonly scale: number;
  /** Where the table stands beside it; null where it stands below. */
  readonly aside: Paper | null;
  /** What must be free on a sheet. */
  readonly room: number;
}

function placeFor(paper: Paper, { title, plot, table }: PlotBlock): PlotPlace {
  const { doc, width, left, tallest } = paper;
  doc.font('bold').fontSize(TITLE_PT * paper.scale);
  const above = doc.heightOfString(title, { width }) + ROUND_TITLE_PT;
  const scale = scaleOf(paper, plot);
  const plotWidth = plot.widthPx * scale;
  const aside = columnOf(paper, left + plotWidth + GAP_PT, width - plotWidth - GAP_PT);
  const isNarrow = columnsToRead(table).length <= MOST_COLUMNS_BESIDE && aside.width >= LEAST_BESIDE_PT;
  const besideHeight = isNarrow ? heightOfTable(aside, table) : Infinity;
  if (besideHeight + above <= tallest) {
    return { scale, aside, room: above + Math.max(plot.heightPx * scale, besideHeight) };
  }
  const forPlot = tallest - above - heightOfTable(paper, table) - 8;
  const fitting = forPlot / plot.heightPx;
  if (fitting < LEAST_PLOT_SCALE) return { scale, aside: null, room: plot.heightPx * scale + above };
  const drawn = Math.min(scale, fitting);
  return { scale: drawn, aside: null, room: tallest - forPlot + plot.heightPx * drawn };
}

/** What a drawing needs to begin on a sheet, with the table beside it or around it. */
export function roomForPlot(paper: Paper, block: PlotBlock): number {
  const { strip, table } = block;
  return strip === undefined
    ? placeFor(paper, block).room
    : roomForTable(paper, table, stripOf(block, strip));
}

function stripOf({ title, plot }: PlotBlock, strip: Strip): TableStrip {
  return { strip, alternative: `${title}. ${plot.alternative}` };
}

/** A drawing with its table; one that has a strip is drawn within its table. */
export function writePlotWithTable(paper: Paper, parent: PDFKit.PDFStructureElement, block: PlotBlock): void {
  const { doc, left } = paper;
  const { title, table, strip } = block;
  if (strip !== undefined) return writeTable(paper, parent, table, stripOf(block, strip));
  const { scale, aside, room } = placeFor(paper, block);
  paper.makeRoom(room);
  writeTitle(paper, parent, title);
  const top = doc.y;
  draw(paper, parent, block, scale);
  if (aside === null) return writeTable(paper, parent, table);
  const below = doc.y;
  doc.y = top;
  writeTable(aside, parent, table);
  doc.x = left;
  doc.y = Math.max(below, doc.y);
}

function writeTitle(paper: Paper, parent: PDFKit.PDFStructureElement, title: string): void {
  paper.write(parent, 'P', title, { sizePt: TITLE_PT, weight: 'bold', abovePt: 4 });
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
