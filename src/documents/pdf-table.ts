import { columnWidths, total } from './column-widths.js';
import { columnsToRead } from './columns-to-read.js';
import type { Strip, Table } from './document-model.js';
import { drawStrip, drawStripHead, stripHead } from './pdf-strip.js';
import type { StripPlace } from './pdf-strip.js';
import type { Paper, Weight } from './sheet-of-paper.js';

const SIZE_PT = 8;
/** Beside a text, and above and below it. */
const PAD_PT = 2;
const ROOM_PT = 1.1;
const STRIP_PT = 132;
/** Below the words of the head of a strip, for its axis. */
const STRIP_AXIS_PT = 13;
const CAPTION_PT = 9;
/** Above and below a caption, and below the table. */
const ROUND_CAPTION_PT = 14;
const SHELL = '#f2efe8';
const HAIR = '#d9d4c8';

/** A drawing within a table: one strip a row, in a column behind the name of the row. */
export interface TableStrip {
  readonly strip: Strip;
  /** Its numbers in words, for those who do not see it. */
  readonly alternative: string;
}

interface Line {
  readonly texts: readonly string[];
  readonly isHead: boolean;
  /** Which row of the table; -1 for the head. */
  readonly row: number;
}

interface Layout {
  readonly widths: readonly number[];
  readonly isNumber: readonly boolean[];
  /** Drawn in the second column. */
  readonly drawn: TableStrip | null;
}

const STRIP_COLUMN = 1;

/** A table with its caption; where it goes on over the page its heads are repeated. */
export function writeTable(
  paper: Paper,
  parent: PDFKit.PDFStructureElement,
  table: Table,
  drawn: TableStrip | null = null,
): void {
  const { caption, rows } = table;
  if (rows.length === 0) {
    paper.write(parent, 'P', `${caption}: none.`, { sizePt: 9, abovePt: 4 });
    return;
  }
  const { head, lines, layout } = laidOut(paper, table, drawn);
  const [first] = lines;
  const opening = heightOf(paper, head, layout) + (first === undefined ? 0 : heightOf(paper, first, layout));
  paper.makeRoom(opening + 24);
  paper.write(parent, 'P', caption, { sizePt: CAPTION_PT, weight: 'bold', abovePt: 6 });
  const element = paper.doc.struct('Table');
  parent.add(element);
  writeLine(paper, element, head, layout);
  for (const line of lines) {
    const height = heightOf(paper, line, layout);
    const page = paper.doc.page;
    paper.makeRoom(height);
    if (paper.doc.page !== page) repeatHead(paper, head, layout);
    writeLine(paper, element, line, layout);
  }
  element.end();
  paper.doc.y += 6;
}

/** How high a table is, with its caption, where all of it stands on one sheet. */
export function heightOfTable(paper: Paper, table: Table): number {
  const { head, lines, layout } = laidOut(paper, table, null);
  const { doc, width, scale } = paper;
  doc.font('bold').fontSize(CAPTION_PT * scale);
  const caption = doc.heightOfString(table.caption, { width }) + ROUND_CAPTION_PT * scale;
  return [head, ...lines].reduce((sum, line) => sum + heightOf(paper, line, layout), caption);
}

/** How wide a table would be by itself. */
export function widthOfTable(paper: Paper, table: Table): number {
  return total(laidOut(paper, table, null).layout.widths);
}

function laidOut(
  paper: Paper,
  table: Table,
  drawn: TableStrip | null,
): { readonly head: Line; readonly lines: readonly Line[]; readonly layout: Layout } {
  const { columns, rows } = table;
  const indexes = columnsToRead(table);
  const withStrip = <Part>(parts: readonly Part[], ofStrip: Part): readonly Part[] =>
    drawn === null ? parts : [...parts.slice(0, STRIP_COLUMN), ofStrip, ...parts.slice(STRIP_COLUMN)];
  const line = (texts: readonly string[], row: number): Line => ({ texts, isHead: row < 0, row });
  const heads = indexes.map((index) => columns[index]?.head ?? '');
  const texts = rows.map((cells) => indexes.map((index) => cells[index]?.text ?? ''));
  const left = { ...paper, width: paper.width - (drawn === null ? 0 : STRIP_PT) };
  const widths = columnWidths(left, [heads, ...texts], { sizePt: SIZE_PT, padPt: PAD_PT });
  return {
    head: line(withStrip(heads, drawn === null ? '' : stripHead(drawn.strip)), -1),
    lines: texts.map((cells, row) => line(withStrip(cells, ''), row)),
    layout: {
      widths: withStrip(widths, STRIP_PT),
      isNumber: withStrip(
        indexes.map((index) => columns[index]?.kind !== 'text'),
        false,
      ),
      drawn,
    },
  };
}

function writeLine(paper: Paper, table: PDFKit.PDFStructureElement, line: Line, layout: Layout): void {
  const { doc } = paper;
  const height = heightOf(paper, line, layout);
  const top = doc.y;
  drawGround(paper, line, layout, height);
  const row = doc.struct('TR');
  table.add(row);
  line.texts.forEach((text, index) => {
    const tag = line.isHead || index === 0 ? 'TH' : 'TD';
    const write = (): void => writeCell(paper, text, weightOf(line, index), top, index, layout);
    const isDrawn = layout.drawn !== null && index === STRIP_COLUMN;
    if (!isDrawn) row.add(doc.struct(tag, {}, write));
    else if (line.isHead)
      row.add(doc.struct(tag, {}, [headOfStrip(paper, layout.drawn, { top, height }, layout), write]));
  });
  row.end();
  drawRow(paper, line, layout, { top, height });
  doc.y = top + height;
}

type Band = Pick<StripPlace, 'top' | 'height'>;

function placeOf({ left }: Paper, { widths }: Layout, band: Band): StripPlace {
  return { ...band, left: left + (widths[0] ?? 0), width: STRIP_PT };
}

/** The whole drawing is heard at the head of its column. */
function headOfStrip(
  paper: Paper,
  { strip, alternative }: TableStrip,
  band: Band,
  layout: Layout,
): PDFKit.PDFStructureElement {
  const place = placeOf(paper, layout, band);
  const { left, width, top, height } = place;
  const bbox: [number, number, number, number] = [left, top, left + width, top + height];
  const figure = { alt: alternative, bbox };
  return paper.doc.struct('Figure', figure, () => drawStripHead(paper, strip, place));
}

/** What is drawn of a row is for the eye: its numbers stand in the same row, and in the words of the drawing. */
function drawRow(paper: Paper, { row }: Line, layout: Layout, band: Band): void {
  const { doc } = paper;
  const drawn = layout.drawn?.strip.rows[row];
  if (layout.drawn === null || drawn === undefined) return;
  doc.markContent('Artifact', { type: 'Layout' });
  drawStrip(paper, layout.drawn.strip, drawn, placeOf(paper, layout, band));
  doc.endMarkedContent();
}

/** On the next page the heads are for the eye: who hears the table knows them from its beginning. */
function repeatHead(paper: Paper, head: Line, layout: Layout): void {
  const { doc } = paper;
  const height = heightOf(paper, head, layout);
  const top = doc.y;
  drawGround(paper, head, layout, height);
  doc.markContent('Artifact');
  head.texts.forEach((text, index) => writeCell(paper, text, 'bold', top, index, layout));
  if (layout.drawn !== null)
    drawStripHead(paper, layout.drawn.strip, placeOf(paper, layout, { top, height }));
  doc.endMarkedContent();
  doc.y = top + height;
}

function drawGround({ doc, left }: Paper, { isHead }: Line, { widths }: Layout, height: number): void {
  const width = total(widths);
  doc.markContent('Artifact', { type: 'Layout' });
  if (isHead) doc.rect(left, doc.y, width, height).fill(SHELL);
  const y = doc.y + height;
  doc
    .moveTo(left, y)
    .lineTo(left + width, y)
    .lineWidth(0.5)
    .strokeColor(HAIR)
    .stroke();
  doc.endMarkedContent();
}

function writeCell(
  { doc, scale, left: edge }: Paper,
  text: string,
  weight: Weight,
  top: number,
  index: number,
  { widths, isNumber }: Layout,
): void {
  const left = edge + widths.slice(0, index).reduce((sum, width) => sum + width, 0);
  doc
    .font(weight)
    .fontSize(SIZE_PT * scale)
    .fillColor('#20242b');
  doc.text(text, left + PAD_PT, top + ROOM_PT, {
    width: (widths[index] ?? 0) - 2 * PAD_PT,
    align: isNumber[index] === true ? 'right' : 'left',
  });
}

function heightOf({ doc, scale }: Paper, line: Line, { widths, drawn }: Layout): number {
  const heights = line.texts.map((text, index) => {
    doc.font(weightOf(line, index)).fontSize(SIZE_PT * scale);
    const height = doc.heightOfString(text === '' ? ' ' : text, { width: (widths[index] ?? 0) - 2 * PAD_PT });
    return drawn !== null && line.isHead && index === STRIP_COLUMN ? height + STRIP_AXIS_PT : height;
  });
  return Math.max(...heights) + 2 * ROOM_PT;
}

function weightOf({ isHead }: Line, index: number): Weight {
  return isHead || index === 0 ? 'bold' : 'regular';
}
