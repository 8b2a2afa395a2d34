import { scaleLinear } from 'd3-scale';
import { bottomAxis } from './axes.js';
import type { Area } from './axes.js';
import { drawing, element, PATH_DIGITS, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Attributes, Plot, PlotFrame } from './svg.js';
import type { BesideLine } from './text-lines.js';
import { besideLine, LINE_PX, linesAt, linesOf, widthOf } from './text-lines.js';
import { lined, painted } from './tones.js';

/** One row: a value with its interval, named, with its numbers in words. */
export interface DotRow {
  readonly label: string;
  /** Value, interval and n as they are read, such as `62 % (45 to 77), n = 42`. */
  readonly words: string;
  /** Null where there is nothing to draw. */
  readonly value: number | null;
  readonly interval: { readonly low: number; readonly high: number } | null;
  /** What the value is held to, marked on the row; its words say what it is. */
  readonly target?: number;
}

/** A line across all rows, named below the axis line. */
export interface DotLine {
  readonly at: number;
  readonly label: string;
}

export interface DotPlotModel extends PlotFrame {
  readonly rows: readonly DotRow[];
  readonly lines: readonly DotLine[];
  /** What the axis must cover; values beyond widen it. */
  readonly domain: readonly [number, number];
  readonly axis: string;
}

const TOP_PX = 24;
/** Where no line has a name above the rows. */
const UNNAMED_TOP_PX = 4;
const SIDE_PX = 12;
/** Below the words of a row: its bar, and where the next row begins. */
const BAR_PX = 10;
const ROW_END_PX = 19;

/** Dots with intervals, one row each under its name, in the order given. */
export function dotPlot(model: DotPlotModel): Plot {
  const { rows, lines, axis } = model;
  const scale = scaleLinear(extent(model), [SIDE_PX, PLOT_WIDTH_PX - SIDE_PX]).nice();
  const names = namedLines(lines, scale);
  const top = names.length === 0 ? UNNAMED_TOP_PX : Math.max(...names.map(({ y }) => y)) + TOP_PX - NAME_PX;
  const placed = placedFrom(top, rows);
  const bottom = (placed.at(-1)?.end ?? top) + 6;
  const area: Area = { left: SIDE_PX, right: PLOT_WIDTH_PX - SIDE_PX, top, bottom };
  return drawing(model, bottom + 44, inWords(model), [
    ...names.map(({ at, label, beside, y }, index) =>
      element(
        'g',
        {},
        element('path', {
          d: downBesideWords(scale(at), y + 4, placed, bottom),
          ...lined('slate', index === 0 ? 'solid' : 'dashed', 1),
        }),
        nameOfLine(label, beside, y),
      ),
    ),
    ...drawnRows(placed, scale),
    bottomAxis(scale, area, scale.ticks(6), axis),
  ]);
}

const NAME_PX = 12;

interface NamedLine extends DotLine {
  readonly beside: BesideLine;
  readonly y: number;
}

/** The first of two is named on its left, so that the names of close lines do not meet; where they would, one below the other. */
function namedLines(lines: readonly DotLine[], x: (value: number) => number): readonly NamedLine[] {
  const named = lines.map((line, index) => {
    const isLeft = lines.length > 1 ? index === 0 : x(line.at) > PLOT_WIDTH_PX / 2;
    const beside = besideLine(x(line.at), line.label, isLeft ? 'left' : 'right', PLOT_WIDTH_PX);
    return { ...line, beside, y: NAME_PX };
  });
  const meet = named.some(({ beside }, index) => {
    const before = named[index - 1];
    return before !== undefined && beside.from < before.beside.to;
  });
  return meet ? named.map((line, index) => ({ ...line, y: NAME_PX + index * LINE_PX })) : named;
}

function nameOfLine(label: string, { place: { x, ...anchor } }: BesideLine, y: number): string {
  return textAt(x, y, label, { ...anchor, ...painted({ fill: 'slate' }) });
}

interface PlacedRow {
  readonly row: DotRow;
  readonly name: readonly string[];
  readonly numbers: readonly string[];
  readonly top: number;
  /** Where its numbers begin: beside its name where there is room, else below it. */
  readonly numbersTop: number;
  readonly barY: number;
  readonly end: number;
}

function placedFrom(top: number, rows: readonly DotRow[]): readonly PlacedRow[] {
  const placed: PlacedRow[] = [];
  for (const row of rows) {
    const start = placed.at(-1)?.end ?? top;
    const [name, numbers] = [linesOf(row.label, PLOT_WIDTH_PX), linesOf(row.words, PLOT_WIDTH_PX)];
    const isOneLine = widthOf(`${row.label}  ${row.words}`) <= PLOT_WIDTH_PX;
    const numbersTop = isOneLine ? start : start + name.length * LINE_PX;
    const wordsEnd = numbersTop + numbers.length * LINE_PX;
    placed.push({
      ...{ row, name, numbers, top: start, numbersTop },
      ...{ barY: wordsEnd + BAR_PX, end: wordsEnd + ROW_END_PX },
    });
  }
  return placed;
}

/** A path from the name of a line down to the axis, but for the lines of words that it would cross. */
function downBesideWords(x: number, from: number, placed: readonly PlacedRow[], bottom: number): string {
  const crossed = placed.flatMap(({ name, top, numbers, numbersTop }) => [
    ...name.flatMap((words, index) => (x < widthOf(words) + 4 ? [top + index * LINE_PX] : [])),
    ...numbers.flatMap((words, index) =>
      x > PLOT_WIDTH_PX - widthOf(words) - 4 ? [numbersTop + index * LINE_PX] : [],
    ),
  ]);
  const ends = [from, ...[...new Set(crossed)].flatMap((top) => [top + 2, top + 18]), bottom];
  const pieces: string[] = [];
  for (let index = 0; index < ends.length; index += 2) {
    const [start = 0, end = 0] = ends.slice(index, index + 2);
    if (end > start) pieces.push(`M${x.toFixed(PATH_DIGITS)} ${start}V${end}`);
  }
  return pieces.join('');
}

/** All names, all numbers, all intervals and all dots, so that each look is said once. */
function drawnRows(placed: readonly PlacedRow[], x: (value: number) => number): readonly string[] {
  const drawn = (look: Attributes, each: (at: PlacedRow) => string): string =>
    element('g', look, ...placed.map(each));
  return [
    drawn(painted({ fill: 'ink' }), ({ name, top }) => linesAt(0, top + 14, name)),
    drawn({ 'text-anchor': 'end', ...painted({ fill: 'slate' }) }, ({ numbers, numbersTop }) =>
      linesAt(PLOT_WIDTH_PX, numbersTop + 14, numbers),
    ),
    drawn(lined('kelp', 'solid', 2), ({ row, barY }) => intervalBar(row, barY, x)),
    ...(placed.some(({ row }) => row.target !== undefined)
      ? [drawn(lined('ink', 'solid', 3), ({ row, barY }) => targetMark(row, barY, x))]
      : []),
    drawn(painted({ fill: 'kelp' }), ({ row, barY }) =>
      row.value === null ? '' : element('circle', { cx: x(row.value), cy: barY, r: 5 }),
    ),
  ];
}

function intervalBar({ interval }: DotRow, y: number, x: (value: number) => number): string {
  if (interval === null) return '';
  const [low, high] = [x(interval.low), x(interval.high)];
  return [
    element('line', { x1: low, x2: high, y1: y, y2: y }),
    ...[low, high].map((end) => element('line', { x1: end, x2: end, y1: y - 4, y2: y + 4 })),
  ].join('');
}

function targetMark({ target }: DotRow, y: number, x: (value: number) => number): string {
  return target === undefined ? '' : element('line', { x1: x(target), x2: x(target), y1: y - 9, y2: y + 9 });
}

function extent({ rows, lines, domain }: DotPlotModel): [number, number] {
  const values = [
    ...domain,
    ...lines.map(({ at }) => at),
    ...rows.flatMap(({ value, interval, target }) => [
      ...(target === undefined ? [] : [target]),
      ...(value === null ? [] : [value]),
      ...(interval === null ? [] : [interval.low, interval.high]),
    ]),
  ];
  return [Math.min(...values), Math.max(...values)];
}

function inWords({ rows, lines }: DotPlotModel): string {
  const marked = lines.map(({ label }) => `Marked: ${label}.`);
  return [`${rows.map(({ label, words }) => `${label}: ${words}`).join('; ')}.`, ...marked].join(' ');
}
