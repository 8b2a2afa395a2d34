import { total } from './column-widths.js';
import type { Table } from './document-model.js';
import { drawStrip, drawStripHead } from './pdf-strip.js';
import type { StripPlace } from './pdf-strip.js';
import {
  continued,
  heightOf,
  laidOut,
  PAD_PT,
  roomIn,
  ROOM_PT,
  shapeOf,
  SIZE_PT,
  STRIP_COLUMN,
  STRIP_PT,
  weightOf,
} from './pdf-table-layout.js';
import type { Layout, Line, TableStrip } from './pdf-table-layout.js';
import type { Paper, Weight } from './sheet-of-paper.js';

/** Of a sheet: a table that is no higher is not parted. */
const KEPT_TOGETHER = 0.4;
/** Lines, the head of a group among them, that stand at least on the first and on the last sheet of a table. */
const LEAST_LINES = 3;
const CAPTION_PT = 9;
/** The caption of a table that goes on over the page. */
const ABOVE_PT = 24;
const NOTE_PT = 7;
/** Above and below a note. */
const ROUND_NOTE_PT = 5;
/** Above and below a caption, and below the table. */
const ROUND_CAPTION_PT = 14;
const SHELL = '#f2efe8';
const HAIR = '#d9d4c8';

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
  paper.makeRoom(roomForTable(paper, table, drawn));
  paper.write(parent, 'P', caption, { sizePt: CAPTION_PT, weight: 'bold', abovePt: 6 });
  const element = paper.doc.struct('Table');
  parent.add(element);
  writeLine(paper, element, head, layout);
  for (const [index, line] of lines.entries()) {
    const page = paper.doc.page;
    const together = lines.slice(index, index + keptFrom(lines, index));
    paper.makeRoom(together.reduce((sum, each) => sum + heightOf(paper, each, layout), 0));
    if (paper.doc.page !== page) repeatHead(paper, [head, ...continued(line)], layout);
    writeLine(paper, element, line, layout);
  }
  element.end();
  if (table.note !== undefined) {
    paper.doc.y += 1;
    paper.write(parent, 'P', table.note, { sizePt: NOTE_PT });
  }
  paper.doc.y += 6;
}

/** How many lines from one on stand on one sheet: the head of a group with its first row, and the last lines of a table. */
function keptFrom(lines: readonly Line[], index: number): number {
  const left = lines.length - index;
  if (left === LEAST_LINES) return left;
  return lines[index]?.isGroup === true ? 1 + keptFrom(lines, index + 1) : 1;
}

/** What a table needs to begin on a sheet: all of it where it is short, else its caption, its head and some lines. */
export function roomForTable(paper: Paper, table: Table, drawn: TableStrip | null = null): number {
  const whole = heightOfTable(paper, table);
  if (whole <= KEPT_TOGETHER * paper.tallest) return whole;
  const { head, lines, layout } = laidOut(paper, table, drawn);
  const opening = [head, ...lines.slice(0, LEAST_LINES)];
  return opening.reduce((sum, line) => sum + heightOf(paper, line, layout), ABOVE_PT);
}

/** How high a table is, with its caption, where all of it stands on one sheet. */
export function heightOfTable(paper: Paper, table: Table): number {
  const { head, lines, layout } = laidOut(paper, table, null);
  const { doc, width, scale } = paper;
  doc.font('bold').fontSize(CAPTION_PT * scale);
  const caption = doc.heightOfString(table.caption, { width }) + ROUND_CAPTION_PT * scale;
  doc.font('regular').fontSize(NOTE_PT * scale);
  const note = table.note === undefined ? 0 : doc.heightOfString(table.note, { width }) + ROUND_NOTE_PT;
  return [head, ...lines].reduce((sum, line) => sum + heightOf(paper, line, layout), caption + note);
}

/** How wide a table would be by itself. */
export function widthOfTable(paper: Paper, table: Table): number {
  return total(laidOut(paper, table, null).layout.widths);
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
    const shape = shapeOf(line, layout);
    const write = (): void => writeCell(paper, text, weightOf(line, index), top, index, shape);
    const isDrawn = layout.drawn !== null && index === STRIP_COLUMN;
    if (!isDrawn) row.add(cellElement(paper, tag, line, write));
    else if (line.isHead)
      row.add(doc.struct(tag, {}, [headOfStrip(paper, layout.drawn, { top, height }, layout), write]));
  });
  row.end();
  drawRow(paper, line, layout, { top, height });
  doc.y = top + height;
}

/** What a head is of: its column, its row, or the rows of its group. */
function cellElement(
  { doc }: Paper,
  tag: 'TH' | 'TD',
  { isHead }: Line,
  write: () => void,
): PDFKit.PDFStructureElement {
  // The types do not know of the scope; the library does.
  const options: Readonly<Record<string, string>> = tag === 'TD' ? {} : { scope: isHead ? 'Column' : 'Row' };
  return doc.struct(tag, options, write);
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
function repeatHead(paper: Paper, lines: readonly Line[], layout: Layout): void {
  for (const line of lines) repeatLine(paper, line, layout);
}

function repeatLine(paper: Paper, line: Line, layout: Layout): void {
  const { doc } = paper;
  const height = heightOf(paper, line, layout);
  const top = doc.y;
  drawGround(paper, line, layout, height);
  doc.markContent('Artifact');
  const shape = shapeOf(line, layout);
  line.texts.forEach((text, index) => writeCell(paper, text, 'bold', top, index, shape));
  if (layout.drawn !== null && line.isHead)
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
  layout: Layout,
): void {
  const { widths, gaps, isNumber } = layout;
  const left = edge + widths.slice(0, index).reduce((sum, width) => sum + width, 0);
  doc
    .font(weight)
    .fontSize(SIZE_PT * scale)
    .fillColor('#20242b');
  doc.text(text, left + PAD_PT + (gaps[index] ?? 0), top + ROOM_PT, {
    width: roomIn(layout, index),
    align: isNumber[index] === true ? 'right' : 'left',
  });
}
