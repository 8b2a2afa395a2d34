import { scaleLinear } from 'd3-scale';
import { bottomAxis } from './axes.js';
import type { Area } from './axes.js';
import { drawing, element, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { lined, painted } from './tones.js';

/** One row: a value with its interval, named, with its numbers in words. */
export interface DotRow {
  readonly label: string;
  /** Value, interval and n as they are read, such as `62 % (45 to 77), n = 42`. */
  readonly words: string;
  /** Null where there is nothing to draw. */
  readonly value: number | null;
  readonly interval: { readonly low: number; readonly high: number } | null;
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
  return drawing(model, bottom + 44, inWords(model), [
    ...lines.map(({ at, label }, index) => {
      // The first of two is named on its left, so that the names of close lines do not meet.
      const isRight = lines.length > 1 ? index === 0 : x(at) > PLOT_WIDTH_PX / 2;
      return element(
        'g',
        {},
        element('line', {
          x1: x(at),
          x2: x(at),
          y1: 16,
          y2: bottom,
          ...lined('slate', index === 0 ? 'solid' : 'dashed', 1),
        }),
        textAt(x(at) + (isRight ? -5 : 5), 12, label, {
          'text-anchor': isRight ? 'end' : 'start',
          ...painted({ fill: 'slate' }),
        }),
      );
    }),
    ...rows.map((row, index) => rowOf(row, tops[index] ?? 0, x)),
    bottomAxis(x, area, x.ticks(6), axis),
  ]);
}

/** Whether the name and the numbers need a line each; letters are about half as wide as they are high. */
function isLong({ label, words }: DotRow): boolean {
  return (label.length + words.length) * LETTER_PX > PLOT_WIDTH_PX - 10;
}

function rowOf(row: DotRow, top: number, x: (value: number) => number): string {
  const { label, words, value, interval } = row;
  const last = isLong(row) ? top + LINE_PX : top;
  const y = last + 26;
  return element(
    'g',
    {},
    textAt(0, top + 14, label, painted({ fill: 'ink' })),
    textAt(PLOT_WIDTH_PX, last + 14, words, { 'text-anchor': 'end', ...painted({ fill: 'slate' }) }),
    interval === null
      ? ''
      : element('line', {
          x1: x(interval.low),
          x2: x(interval.high),
          y1: y,
          y2: y,
          ...lined('kelp', 'solid', 2),
        }),
    ...(interval === null ? [] : [interval.low, interval.high]).map((end) =>
      element('line', { x1: x(end), x2: x(end), y1: y - 4, y2: y + 4, ...lined('kelp', 'solid', 2) }),
    ),
    value === null ? '' : element('circle', { cx: x(value), cy: y, r: 5, ...painted({ fill: 'kelp' }) }),
  );
}

function extent({ rows, lines, domain }: DotPlotModel): [number, number] {
  const values = [
    ...domain,
    ...lines.map(({ at }) => at),
    ...rows.flatMap(({ value, interval }) => [
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
