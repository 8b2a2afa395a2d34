import { columnsToRead } from './columns-to-read.js';
import type { Table } from './document-model.js';
import type { Paper, Weight } from './sheet-of-paper.js';

const SIZE_PT = 7.5;
const PAD_PT = 2;
const CAPTION_PT = 9;
/** Above and below a caption, and below the table. */
const ROUND_CAPTION_PT = 14;
/** Of the paper, at most for one column while others want room. */
const WIDEST_SHARE = 0.25;
/** Where a line may end: after a space, or after the hyphen of a word. */
const BREAKS = / |(?<=[a-z]-)/;
const SHELL = '#f2efe8';
const HAIR = '#d9d4c8';

interface Line {
  readonly texts: readonly string[];
  readonly isHead: boolean;
}

interface Layout {
  readonly widths: readonly number[];
  readonly isNumber: readonly boolean[];
}

/** A table with its caption; where it goes on over the page its heads are repeated. */
export function writeTable(paper: Paper, parent: PDFKit.PDFStructureElement, table: Table): void {
  const { caption, rows } = table;
  if (rows.length === 0) {
    paper.write(parent, 'P', `${caption}: none.`, { sizePt: 9, abovePt: 4 });
    return;
  }
  const { head, lines, layout } = laidOut(paper, table);
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
  const { head, lines, layout } = laidOut(paper, table);
  const { doc, width, scale } = paper;
  doc.font('bold').fontSize(CAPTION_PT * scale);
  const caption = doc.heightOfString(table.caption, { width }) + ROUND_CAPTION_PT * scale;
  return [head, ...lines].reduce((sum, line) => sum + heightOf(paper, line, layout), caption);
}

function laidOut(
  paper: Paper,
  table: Table,
): { readonly head: Line; readonly lines: readonly Line[]; readonly layout: Layout } {
  const { columns, rows } = table;
  const indexes = columnsToRead(table);
  const head: Line = { texts: indexes.map((index) => columns[index]?.head ?? ''), isHead: true };
  const lines = rows.map((cells): Line => ({
    texts: indexes.map((index) => cells[index]?.text ?? ''),
    isHead: false,
  }));
  const layout: Layout = {
    widths: widthsFor(paper, [head, ...lines]),
    isNumber: indexes.map((index) => columns[index]?.kind !== 'text'),
  };
  return { head, lines, layout };
}

function writeLine(paper: Paper, table: PDFKit.PDFStructureElement, line: Line, layout: Layout): void {
  const { doc } = paper;
  const height = heightOf(paper, line, layout);
  const top = doc.y;
  drawGround(paper, line, height);
  const row = doc.struct('TR');
  table.add(row);
  line.texts.forEach((text, index) => {
    const tag = line.isHead || index === 0 ? 'TH' : 'TD';
    row.add(doc.struct(tag, {}, () => writeCell(paper, text, weightOf(line, index), top, index, layout)));
  });
  row.end();
  doc.y = top + height;
}

/** On the next page the heads are for the eye: who hears the table knows them from its beginning. */
function repeatHead(paper: Paper, head: Line, layout: Layout): void {
  const { doc } = paper;
  const height = heightOf(paper, head, layout);
  const top = doc.y;
  drawGround(paper, head, height);
  doc.markContent('Artifact');
  head.texts.forEach((text, index) => writeCell(paper, text, 'bold', top, index, layout));
  doc.endMarkedContent();
  doc.y = top + height;
}

function drawGround({ doc, left, width }: Paper, { isHead }: Line, height: number): void {
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
  doc.text(text, left + PAD_PT, top + PAD_PT, {
    width: (widths[index] ?? 0) - 2 * PAD_PT,
    align: isNumber[index] === true ? 'right' : 'left',
  });
}

function heightOf({ doc, scale }: Paper, line: Line, { widths }: Layout): number {
  const heights = line.texts.map((text, index) => {
    doc.font(weightOf(line, index)).fontSize(SIZE_PT * scale);
    return doc.heightOfString(text === '' ? ' ' : text, { width: (widths[index] ?? 0) - 2 * PAD_PT });
  });
  return Math.max(...heights) + 2 * PAD_PT;
}

/** As wide as the longest text up to a limit, then all together as wide as the paper, no column less than its longest word. */
function widthsFor({ doc, width, scale }: Paper, lines: readonly Line[]): readonly number[] {
  doc.font('bold').fontSize(SIZE_PT * scale);
  const count = lines[0]?.texts.length ?? 0;
  const measure = (text: string): number => doc.widthOfString(text) + 2 * PAD_PT + 3;
  const columns = Array.from({ length: count }, (_, index) => {
    const texts = lines.map(({ texts: cells }) => cells[index] ?? '');
    const word = Math.max(...texts.flatMap((text) => text.split(BREAKS)).map(measure));
    const whole = Math.min(WIDEST_SHARE * width, Math.max(...texts.slice(1).map(measure)));
    return { least: word, wanted: Math.max(word, whole) };
  });
  const least = columns.reduce((sum, column) => sum + column.least, 0);
  const extra = columns.reduce((sum, column) => sum + column.wanted - column.least, 0);
  if (least >= width) return columns.map((column) => (column.least * width) / least);
  if (extra === 0) return columns.map((column) => column.least + (width - least) / count);
  return columns.map((column) => column.least + ((column.wanted - column.least) * (width - least)) / extra);
}

function weightOf({ isHead }: Line, index: number): Weight {
  return isHead || index === 0 ? 'bold' : 'regular';
}
