import { scaleLinear } from 'd3-scale';
import { bottomAxis } from './axes.js';
import type { Area } from './axes.js';
import { drawing, element, PATH_DIGITS, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Attributes, Plot, PlotFrame } from './svg.js';
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

const ROW_PX = 36;
const TOP_PX = 24;
const SIDE_PX = 12;
const LINE_PX = 16;
const LETTER_PX = 6.2;

/** Dots with intervals, one row each under its name, in the order given. */
export function dotPlot(model: DotPlotModel): Plot {
  const { rows, lines, axis } = model;
  const tops: number[] = [];
  const rowsEnd = rows.reduce((top, row) => {
    tops.push(top);
    return top + (isLong(row) ? ROW_PX + LINE_PX : ROW_PX);
  }, TOP_PX);
  const bottom = rowsEnd + 6;
  const area: Area = { left: SIDE_PX, right: PLOT_WIDTH_PX - SIDE_PX, top: TOP_PX, bottom };
  const x = scaleLinear(extent(model), [area.left, area.right]).nice();
  const placed = rows.map((row, index) => ({ row, top: tops[index] ?? 0 }));
  return drawing(model, bottom + 44, inWords(model), [
    ...lines.map(({ at, label }, index) => {
      // The first of two is named on its left, so that the names of close lines do not meet.
      const isRight = lines.length > 1 ? index === 0 : x(at) > PLOT_WIDTH_PX / 2;
      return element(
        'g',
        {},
        element('path', {
          d: downBesideWords(x(at), placed, bottom),
          ...lined('slate', index === 0 ? 'solid' : 'dashed', 1),
        }),
        textAt(x(at) + (isRight ? -5 : 5), 12, label, {
          'text-anchor': isRight ? 'end' : 'start',
          ...painted({ fill: 'slate' }),
        }),
      );
    }),
    ...drawnRows(placed, x),
    bottomAxis(x, area, x.ticks(6), axis),
  ]);
}

/** Whether the name and the numbers need a line each; letters are about half as wide as they are high. */
function isLong({ label, words }: DotRow): boolean {
  return (label.length + words.length) * LETTER_PX > PLOT_WIDTH_PX - 10;
}

interface PlacedRow {
  readonly row: DotRow;
  readonly top: number;
}

/** A path from the name of a line down to the axis, but for the lines of words that it would cross. */
function downBesideWords(x: number, placed: readonly PlacedRow[], bottom: number): string {
  const crossed = placed.flatMap((at) => {
    const { label, words } = at.row;
    const isAtName = x < label.length * LETTER_PX + 4;
    const isAtNumbers = x > PLOT_WIDTH_PX - words.length * LETTER_PX - 4;
    return [...(isAtName ? [at.top] : []), ...(isAtNumbers ? [numbersAt(at)] : [])];
  });
  const ends = [16, ...[...new Set(crossed)].flatMap((top) => [top + 2, top + 18]), bottom];
  const pieces: string[] = [];
  for (let index = 0; index < ends.length; index += 2) {
    const [from = 0, to = 0] = ends.slice(index, index + 2);
    if (to > from) pieces.push(`M${x.toFixed(PATH_DIGITS)} ${from}V${to}`);
  }
  return pieces.join('');
}

function numbersAt({ row, top }: PlacedRow): number {
  return isLong(row) ? top + LINE_PX : top;
}

/** All names, all numbers, all intervals and all dots, so that each look is said once. */
function drawnRows(placed: readonly PlacedRow[], x: (value: number) => number): readonly string[] {
  const drawn = (look: Attributes, each: (at: PlacedRow) => string): string =>
    element('g', look, ...placed.map(each));
  return [
    drawn(painted({ fill: 'ink' }), ({ row, top }) => textAt(0, top + 14, row.label)),
    drawn({ 'text-anchor': 'end', ...painted({ fill: 'slate' }) }, (at) =>
      textAt(PLOT_WIDTH_PX, numbersAt(at) + 14, at.row.words),
    ),
    drawn(lined('kelp', 'solid', 2), (at) => intervalBar(at.row, numbersAt(at) + 26, x)),
    ...(placed.some(({ row }) => row.target !== undefined)
      ? [drawn(lined('ink', 'solid', 3), (at) => targetMark(at.row, numbersAt(at) + 26, x))]
      : []),
    drawn(painted({ fill: 'kelp' }), (at) =>
      at.row.value === null ? '' : element('circle', { cx: x(at.row.value), cy: numbersAt(at) + 26, r: 5 }),
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
