import { scaleLinear } from 'd3-scale';
import { bottomAxis } from './axes.js';
import type { Area } from './axes.js';
import { drawing, element, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { lined, painted } from './tones.js';

/** One measure of one person: its change as a multiple of the MID, better being positive. */
export interface ChangeStrip {
  readonly label: string;
  /** The change as it is read, such as `+60 m`. */
  readonly words: string;
  readonly timesMid: number;
}

export interface ChangeStripsModel extends PlotFrame {
  readonly strips: readonly ChangeStrip[];
}

const SIDE_PX = 14;
const TOP_PX = 26;
const STRIP_PX = 48;
/** Below the top of a strip: the line of its words, and that of its dot. */
const WORDS_PX = 17;
const DOT_PX = 33;
const TICK_PX = 8;
const TICKS = 5;
/** Least part of the axis to the left of no change, as a share of the part to its right. */
const LEFT_OF_ZERO = 0.25;
const LINES = [
  { at: 0, label: 'no change', dash: 'solid' },
  { at: 1, label: 'MID', dash: 'dashed' },
] as const;

/**
 * The changes of one person against the MID of each measure, a strip each: its name and its change above a line with a
 * dot, no change and the MID marked. Only as multiples of the MID can changes of different units stand on one axis.
 */
export function changeStrips(model: ChangeStripsModel): Plot {
  const { strips } = model;
  const bottom = TOP_PX + strips.length * STRIP_PX;
  const area: Area = { left: SIDE_PX, right: PLOT_WIDTH_PX - SIDE_PX, top: TOP_PX, bottom };
  const values = strips.map(({ timesMid }) => timesMid);
  const best = Math.max(2, ...values);
  // However far the best goes, the name of no change has its place to the left of it.
  const worst = Math.min(-1, -best * LEFT_OF_ZERO, ...values);
  const x = scaleLinear([worst, best], [area.left, area.right]).nice();
  const parts = [
    ...LINES.map(({ at, label }, index) =>
      // The first is named on its left, so that the names of close lines do not meet.
      textAt(x(at) + (index === 0 ? -4 : 4), 14, label, {
        'text-anchor': index === 0 ? 'end' : 'start',
        ...painted({ fill: 'slate' }),
      }),
    ),
    ...strips.map((strip, index) => drawnStrip(strip, TOP_PX + index * STRIP_PX, area, x)),
    bottomAxis(x, area, x.ticks(TICKS), 'Multiples of the MID'),
  ];
  return drawing(model, bottom + 44, inWords(strips), parts);
}

function drawnStrip(
  { label, words, timesMid }: ChangeStrip,
  top: number,
  { left, right }: Area,
  x: (value: number) => number,
): string {
  const y = top + DOT_PX;
  return element(
    'g',
    {},
    element('line', { x1: 0, x2: PLOT_WIDTH_PX, y1: top, y2: top, ...lined('hair', 'solid', 1) }),
    textAt(0, top + WORDS_PX, label, painted({ fill: 'ink' })),
    textAt(PLOT_WIDTH_PX, top + WORDS_PX, words, { 'text-anchor': 'end', ...painted({ fill: 'slate' }) }),
    element('line', { x1: left, x2: right, y1: y, y2: y, ...lined('line', 'solid', 1) }),
    ...LINES.map(({ at, dash }) =>
      element('line', {
        x1: x(at),
        x2: x(at),
        y1: y - TICK_PX,
        y2: y + TICK_PX,
        ...lined('slate', dash, 1.5),
      }),
    ),
    element('circle', { cx: x(timesMid), cy: y, r: 5, ...painted({ fill: 'kelp' }) }),
  );
}

function inWords(strips: readonly ChangeStrip[]): string {
  const each = strips.map(({ label, words }) => `${label}: ${words}`).join('; ');
  return [`${each}.`, ...LINES.map(({ label }) => `Marked: ${label}.`)].join(' ');
}
