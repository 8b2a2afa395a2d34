import { columnWidths, total } from './column-widths.js';
import { columnsToRead } from './columns-to-read.js';
import type { Strip, Table } from './document-model.js';
import { stripHead } from './pdf-strip.js';
import type { Paper, Weight } from './sheet-of-paper.js';

export const SIZE_PT = 8;
/** Beside a text. */
export const PAD_PT = 2;
/** Above and below a text. */
export const ROOM_PT = 1.1;
export const STRIP_PT = 132;
/** Between a number and a text behind it. */
const GAP_PT = 7;
/** Below the words of the head of a strip, for its axis. */
const STRIP_AXIS_PT = 13;
/** The place of the column in which a drawing stands. */
export const STRIP_COLUMN = 1;

/** A drawing within a table: one strip a row, in a column behind the name of the row. */
export interface TableStrip {
  readonly strip: Strip;
  /** Its numbers in words, for those who do not see it. */
  readonly alternative: string;
}

/** A line of a table as it is written. */
export interface Line {
  readonly texts: readonly string[];
  readonly isHead: boolean;
  /** Which row of the table; -1 for the head, and for the head of a group. */
  readonly row: number;
  /** The head of a group: its one text runs across the table. */
  readonly isGroup?: boolean;
  /** The head of the group that it stands in. */
  readonly under?: string;
}

/** The columns of a table. */
export interface Layout {
  readonly widths: readonly number[];
  readonly isNumber: readonly boolean[];
  /** Left free before a text that stands behind a number, which ends at the edge of its column. */
  readonly gaps: readonly number[];
  /** Drawn in the second column. */
  readonly drawn: TableStrip | null;
}

/** A table in lines: its head, and its rows, each group of them under its head. */
export function laidOut(
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
  const numbers = indexes.map((index) => columns[index]?.kind !== 'text');
  const isNumber = withStrip(numbers, false);
  const gaps = isNumber.map((isThis, index) => (!isThis && isNumber[index - 1] === true ? GAP_PT : 0));
  const taken = total(gaps) + (drawn === null ? 0 : STRIP_PT);
  const left = { ...paper, width: paper.width - taken };
  const type = { sizePt: SIZE_PT, padPt: PAD_PT };
  const widths = withStrip(columnWidths(left, [heads, ...texts], type, numbers), STRIP_PT);
  return {
    head: line(withStrip(heads, drawn === null ? '' : stripHead(drawn.strip)), -1),
    lines: underGroups(
      texts.map((cells, row) => line(withStrip(cells, ''), row)),
      table.groups,
    ),
    layout: { widths: widths.map((width, index) => width + (gaps[index] ?? 0)), isNumber, gaps, drawn },
  };
}

/** The lines of a table, each group of them under its head. */
function underGroups(lines: readonly Line[], groups: Table['groups']): readonly Line[] {
  if (groups === undefined) return lines;
  let at = 0;
  return groups.flatMap(({ title, rowCount }) => {
    const rows = lines.slice(at, at + rowCount);
    at += rowCount;
    return [groupHead(title), ...rows.map((line) => ({ ...line, under: title }))];
  });
}

function groupHead(title: string): Line {
  return { texts: [title], isHead: false, row: -1, isGroup: true };
}

/** What tells on the next page which group goes on. */
export function continued({ under }: Line): readonly Line[] {
  return under === undefined ? [] : [groupHead(`${under}, continued`)];
}

/** The head of a group has one column as wide as the table. */
export function shapeOf({ isGroup }: Line, layout: Layout): Layout {
  return isGroup === true
    ? { widths: [total(layout.widths)], isNumber: [false], gaps: [0], drawn: null }
    : layout;
}

/** How high a line is. */
export function heightOf({ doc, scale }: Paper, line: Line, layout: Layout): number {
  const shape = shapeOf(line, layout);
  const { drawn } = shape;
  const heights = line.texts.map((text, index) => {
    doc.font(weightOf(line, index)).fontSize(SIZE_PT * scale);
    const height = doc.heightOfString(text === '' ? ' ' : text, { width: roomIn(shape, index) });
    return drawn !== null && line.isHead && index === STRIP_COLUMN ? height + STRIP_AXIS_PT : height;
  });
  return Math.max(...heights) + 2 * ROOM_PT;
}

/** Under the head of a group the names of rows are not bold, so that the group can be told from them. */
export function weightOf({ isHead, under }: Line, index: number): Weight {
  return isHead || (index === 0 && under === undefined) ? 'bold' : 'regular';
}

/** How wide a text of a column may be. */
export function roomIn({ widths, gaps }: Layout, index: number): number {
  return (widths[index] ?? 0) - (gaps[index] ?? 0) - 2 * PAD_PT;
}
