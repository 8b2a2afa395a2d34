import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { bottomAxis, leftAxis } from './axes.js';
import type { Area } from './axes.js';
import { besideMarks } from './beside-marks.js';
import type { TextPlace } from './beside-marks.js';
import { drawing, element, PATH_DIGITS, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { linesAt } from './text-lines.js';
import { lined, painted } from './tones.js';
import type { Dash } from './tones.js';

interface Limits {
  readonly low: number;
  readonly high: number;
}

export interface FunnelPlotModel extends PlotFrame {
  /** Percentages of groups of people, in the order in which they are named. */
  readonly groups: readonly {
    readonly label: string;
    readonly count: number;
    readonly percent: number;
    /** Its numbers, and where it stands to the limits. */
    readonly words: string;
    /** Beyond a limit: drawn as a diamond. */
    readonly isBeyond: boolean;
  }[];
  readonly centre: { readonly at: number; readonly label: string };
  /** Limits for numbers of people in rising order. */
  readonly limits: readonly { readonly count: number; readonly inner: Limits; readonly outer: Limits }[];
  readonly axis: string;
}

const AREA: Area = { left: 40, right: PLOT_WIDTH_PX - 14, top: 56, bottom: 316 };
const HEIGHT_PX = 362;

type LimitRow = FunnelPlotModel['limits'][number];

/** Groups by their size within limits that narrow as they grow: who lies outside differs by more than chance. */
export function funnelPlot(model: FunnelPlotModel): Plot {
  const { groups, centre, limits, axis } = model;
  const widest = Math.max(1, ...groups.map(({ count }) => count), ...limits.map(({ count }) => count));
  const x = scaleLinear([0, widest * 1.05], [AREA.left, AREA.right]);
  const y = scaleLinear([0, 100], [AREA.bottom, AREA.top]);
  const curve = (of: (row: LimitRow) => number, dash: Dash): string =>
    element('path', {
      d:
        line<LimitRow>(
          (row) => x(row.count),
          (row) => y(of(row)),
        ).digits(PATH_DIGITS)(limits) ?? '',
      ...lined('slate', dash, 1.5),
    });
  const names = besideMarks(
    groups.map(({ count, percent, label }) => ({ x: x(count), y: y(percent), text: label })),
    { ...AREA, top: AREA.top - 8, right: PLOT_WIDTH_PX },
  );
  return drawing(model, HEIGHT_PX, inWords(model), [
    leftAxis(y, AREA, [0, 25, 50, 75, 100], '%'),
    curve(({ inner }) => inner.low, 'dashed'),
    curve(({ inner }) => inner.high, 'dashed'),
    curve(({ outer }) => outer.low, 'dotted'),
    curve(({ outer }) => outer.high, 'dotted'),
    element('line', {
      x1: AREA.left,
      x2: AREA.right,
      y1: y(centre.at),
      y2: y(centre.at),
      ...lined('ink', 'solid', 1),
    }),
    ...names.map(leader),
    ...names.map(name),
    ...groups.map(({ count, percent, isBeyond }) => markAt(x(count), y(percent), isBeyond)),
    linesAt(AREA.right, 12, [centre.label, '95 % limits dashed, 99.8 % dotted'], {
      'text-anchor': 'end',
      ...painted({ fill: 'slate' }),
    }),
    bottomAxis(x, AREA, x.ticks(5), axis),
  ]);
}

/** On ground of its own, so that no line runs through it. */
function name({ text, middle, room: { left, right, top, bottom } }: TextPlace): string {
  const ground = { x: left, y: top, width: right - left, height: bottom - top };
  return element(
    'g',
    {},
    element('rect', { ...ground, ...painted({ fill: 'paper' }) }),
    textAt(left, middle + 4, text, painted({ fill: 'ink' })),
  );
}

/** From a mark to the nearest of its name, where that stands higher or lower. */
function leader({ x, y, middle, room: { left, right, top, bottom } }: TextPlace): string {
  if (middle === y) return '';
  const end = { x2: Math.max(left, Math.min(x, right)), y2: middle < y ? bottom : top };
  return element('line', { x1: x, y1: y, ...end, ...lined('line', 'solid', 1) });
}

function markAt(x: number, y: number, isBeyond: boolean): string {
  const look = { ...painted({ fill: 'kelp', stroke: 'paper' }), 'stroke-width': 1 };
  if (!isBeyond) return element('circle', { cx: x, cy: y, r: 5, ...look });
  const transform = `rotate(45 ${Math.round(x)} ${Math.round(y)})`;
  return element('rect', { x: x - 5, y: y - 5, width: 10, height: 10, transform, ...look });
}

function inWords({ groups, centre }: FunnelPlotModel): string {
  const each = groups.map(({ label, words }) => `${label}: ${words}`);
  return `${each.join('; ')}. Marked: ${centre.label}.`;
}
