import { zipSync } from 'fflate';

/** A cell of a workbook made by hand: text, a number, a date as the spreadsheet's day, a formula with its stored value. */
export type BookCell =
  | string
  | number
  | null
  | { readonly day: number }
  | { readonly formula: string; readonly value: string | number }
  | { readonly error: string };

/** A sheet of a workbook made by hand. */
export interface BookSheet {
  readonly rows: readonly (readonly BookCell[])[];
  /** Ranges of merged cells, such as `C1:E1`. */
  readonly merged?: readonly string[];
  /** Rows of XML behind the others. */
  readonly moreRows?: string;
  readonly dimension?: string;
}

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const DATE_STYLE = 1;

/** An XLSX file with one sheet, by the standard (ECMA-376), so that it holds what no writer of ours would write. */
export function workbook({ rows, merged = [], moreRows = '', dimension }: BookSheet): Uint8Array {
  const data = rows.map((cells, index) => rowXml(cells, index + 1)).join('');
  const merges = merged.map((ref) => `<mergeCell ref="${ref}"/>`).join('');
  const files: Readonly<Record<string, string>> = {
    '[Content_Types].xml': `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/></Types>`,
    '_rels/.rels': `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${OFFICE}/relationships/styles" Target="styles.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook ${MAIN} xmlns:r="${OFFICE}/relationships"><sheets><sheet name="Referrals" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/styles.xml': `<styleSheet ${MAIN}><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    'xl/worksheets/sheet1.xml': `<worksheet ${MAIN}>${dimension === undefined ? '' : `<dimension ref="${dimension}"/>`}<sheetData>${data}${moreRows}</sheetData>${merges === '' ? '' : `<mergeCells>${merges}</mergeCells>`}</worksheet>`,
  };
  return zipSync(
    Object.fromEntries(Object.entries(files).map(([name, text]) => [name, Buffer.from(XML + text)])),
  );
}

function rowXml(cells: readonly BookCell[], number: number): string {
  const written = cells.map((cell, index) => cellXml(cell, `${columnName(index)}${number}`)).join('');
  return written === '' ? '' : `<row r="${number}">${written}</row>`;
}

function cellXml(cell: BookCell, ref: string): string {
  if (cell === null) return '';
  if (typeof cell === 'string') return `<c r="${ref}" t="inlineStr"><is><t>${escaped(cell)}</t></is></c>`;
  if (typeof cell === 'number') return `<c r="${ref}"><v>${cell}</v></c>`;
  if ('day' in cell) return `<c r="${ref}" s="${DATE_STYLE}"><v>${cell.day}</v></c>`;
  if ('error' in cell) return `<c r="${ref}" t="e"><v>${cell.error}</v></c>`;
  const type = typeof cell.value === 'string' ? ' t="str"' : '';
  return `<c r="${ref}"${type}><f>${escaped(cell.formula)}</f><v>${escaped(String(cell.value))}</v></c>`;
}

function columnName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : columnName(Math.floor(index / 26) - 1) + letter;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
