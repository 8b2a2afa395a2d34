import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import { unpackWoff } from './unpack-woff.js';

type Element = PDFKit.PDFStructureElement;

const FILES = createRequire(import.meta.url);
const FONTS = { regular: fontFile(400), bold: fontFile(600) };
export type Weight = keyof typeof FONTS;

export const MARGIN_PT = 40;
const FOOT_PT = 24;
const INK = '#20242b';
const SLATE = '#565f69';

/** How a document is laid on paper, and what its file says of itself. */
export interface SheetStyle {
  readonly layout: 'landscape' | 'portrait';
  /** Everything is so many times as large as in a report. */
  readonly scale: number;
  /** When the file was made; now, where it is left out. The same document with the same instant is the same bytes. */
  readonly madeAt?: NonNullable<PDFKit.DocumentInfo['CreationDate']>;
}

/** For tables of many columns. */
export const REPORT_SHEET: SheetStyle = { layout: 'landscape', scale: 1 };

/** For few numbers in large type. */
export const LEAFLET_SHEET: SheetStyle = { layout: 'portrait', scale: 1.25 };

/** Paper on which a document is written from the top: where the next thing comes, and its place in the tree of tags. */
export interface Paper {
  readonly doc: PDFKit.PDFDocument;
  readonly left: number;
  readonly width: number;
  readonly scale: number;
  /** A new sheet where less than so much is left on this one. */
  readonly makeRoom: (heightPt: number) => void;
  /** The tallest thing that fits on a sheet. */
  readonly tallest: number;
  readonly write: (parent: Element, tag: string, text: string, style: Style) => void;
}

/** Sizes as in a report; they grow with the scale of the paper. */
export interface Style {
  readonly sizePt: number;
  readonly weight?: Weight;
  /** Left free above. */
  readonly abovePt?: number;
}

/** A4, tagged, with embedded type; drawn from left to right and from the top down. */
export function newPaper(title: string, { layout, scale, madeAt }: SheetStyle): Paper {
  const doc = new PDFDocument({
    size: 'A4',
    layout,
    margin: MARGIN_PT,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    bufferPages: true,
    info: {
      Title: title,
      Creator: 'Tidemark',
      Producer: 'Tidemark',
      ...(madeAt === undefined ? {} : { CreationDate: madeAt }),
    },
    // None: one that is given here has no name, and is parsed anew whenever it is called by one.
    font: '',
  });
  doc.registerFont('regular', FONTS.regular);
  doc.registerFont('bold', FONTS.bold);
  doc.font('regular');
  const width = doc.page.width - 2 * MARGIN_PT;
  const bottom = doc.page.height - MARGIN_PT - FOOT_PT;
  const makeRoom = (heightPt: number): void => {
    if (doc.y + heightPt <= bottom || doc.y <= MARGIN_PT) return;
    doc.addPage();
    doc.x = MARGIN_PT;
    doc.y = MARGIN_PT;
  };
  const sheet = { doc, left: MARGIN_PT, width, scale, makeRoom, tallest: bottom - MARGIN_PT };
  return { ...sheet, write: writerOn(sheet) };
}

/** A part of a sheet beside something else, on which nothing goes on over the page: what is written there must fit. */
export function columnOf(paper: Paper, left: number, width: number): Paper {
  const column = { ...paper, left, width, makeRoom: () => {} };
  return { ...column, write: writerOn(column) };
}

function writerOn({ doc, left, width, scale, makeRoom }: Omit<Paper, 'write'>): Paper['write'] {
  return (parent, tag, text, style) => {
    const { weight = 'regular' } = style;
    const [sizePt, abovePt] = [style.sizePt * scale, (style.abovePt ?? 0) * scale];
    doc.font(weight).fontSize(sizePt);
    makeRoom(doc.heightOfString(text, { width }) + abovePt);
    parent.add(
      doc.struct(tag, {}, () => {
        doc
          .font(weight)
          .fontSize(sizePt)
          .fillColor(INK)
          .text(text, left, doc.y + abovePt, { width });
      }),
    );
    doc.y += 3;
  };
}

/** Writes the foot of every page, outside the tree of tags, and gives the whole file. */
export async function finishPaper({ doc, width }: Paper, footer: string): Promise<Buffer> {
  const { start, count } = doc.bufferedPageRange();
  for (let page = start; page < start + count; page += 1) {
    doc.switchToPage(page);
    // The foot stands in the margin, where text would begin a new page.
    doc.page.margins.bottom = 0;
    doc.markContent('Artifact', { type: 'Pagination' });
    doc.font('regular').fontSize(8).fillColor(SLATE);
    const y = doc.page.height - MARGIN_PT;
    doc.text(footer, MARGIN_PT, y, { width: width * 0.75, lineBreak: false });
    doc.text(`Page ${page - start + 1} of ${count}`, MARGIN_PT, y, {
      width,
      align: 'right',
      lineBreak: false,
    });
    doc.endMarkedContent();
  }
  const chunks: Buffer[] = [];
  const whole = new Promise<Buffer>((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
  doc.end();
  return whole;
}

function fontFile(weight: 400 | 600): Buffer {
  const name = `@fontsource/source-sans-3/files/source-sans-3-latin-${weight}-normal.woff`;
  return unpackWoff(readFileSync(FILES.resolve(name)));
}
