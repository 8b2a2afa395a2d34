import { scaleLinear } from 'd3-scale';
import { curveStep, line } from 'd3-shape';
import { leftAxis, numberText } from './axes.js';
import type { Area } from './axes.js';
import { drawing, element, inTenths, PATH_DIGITS, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { LINE_PX, linesAt, linesOf } from './text-lines.js';
import { lined, painted } from './tones.js';

/** One period. */
export interface TimePoint {
  readonly label: string;
  /** Its name on the axis, short, and that of the year or so that it belongs to. */
  readonly mark: string;
  readonly group: string;
  /** Which months it is, in words. */
  readonly months?: string;
  /** Null where the period has no value. */
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Part of a signal: drawn as a diamond. */
  readonly isSignal: boolean;
  /** May still move: drawn hollow. */
  readonly isProvisional: boolean;
}

export interface ControlChartModel extends PlotFrame {
  readonly points: readonly TimePoint[];
  readonly centre: { readonly at: number; readonly label: string } | null;
  readonly axis: string;
  /** What the axis must cover; null to follow the values. */
  readonly domain: readonly [number, number] | null;
  readonly places: number;
  /** Below the axis: what the marks stand for. */
  readonly note: string;
  /** The signals in words; empty where no rule is met. */
  readonly signals: readonly string[];
}

const LEFT_PX = 40;
const RIGHT_PX = PLOT_WIDTH_PX - 14;
const PLOT_HEIGHT_PX = 190;
const FIRST_LINE_PX = 12;
/** Below the axis: the marks of the points, their groups, and the note. */
const MARKS_PX = 18;
const GROUPS_PX = 34;
const NOTE_PX = 56;

/** Values over time, left to right, about their centre and within their limits; what meets a rule is another shape. */
export function controlChart(model: ControlChartModel): Plot {
  const { points, centre, axis, note } = model;
  const centreLines = centre === null ? [] : linesOf(centre.label, PLOT_WIDTH_PX);
  const noteLines = linesOf(note, PLOT_WIDTH_PX);
  const top = FIRST_LINE_PX + Math.max(1, centreLines.length) * LINE_PX + 14;
  const area: Area = { left: LEFT_PX, right: RIGHT_PX, top, bottom: top + PLOT_HEIGHT_PX };
  const x = scaleLinear([0, Math.max(1, points.length - 1)], [area.left + 10, area.right - 10]);
  const y = scaleLinear(extent(model), [area.bottom, area.top]).nice(5);
  const limit = (of: 'lower' | 'upper'): string =>
    line<TimePoint>(
      (_, index) => x(index),
      (point) => y(point[of] ?? 0),
    )
      .defined((point) => point[of] !== null)
      .curve(curveStep)
      .digits(PATH_DIGITS)(points) ?? '';
  const path =
    line<TimePoint>(
      (_, index) => x(index),
      (point) => y(point.value ?? 0),
    )
      .defined(({ value }) => value !== null)
      .digits(PATH_DIGITS)(points) ?? '';
  const hasLimits = points.some(({ upper }) => upper !== null);
  return drawing(model, area.bottom + NOTE_PX + noteLines.length * LINE_PX - 8, inWords(model), [
    leftAxis(y, area, y.ticks(5), axis),
    element('line', { x1: area.left, x2: area.right, y1: area.bottom, y2: area.bottom, ...lined('line') }),
    ...(hasLimits
      ? [
          element('path', { d: limit('upper'), ...lined('slate', 'dashed', 1) }),
          element('path', { d: limit('lower'), ...lined('slate', 'dashed', 1) }),
        ]
      : []),
    centre === null
      ? ''
      : element('line', {
          x1: area.left,
          x2: area.right,
          y1: y(centre.at),
          y2: y(centre.at),
          ...lined('ink', 'solid', 1),
        }),
    element('path', { d: path, ...lined('kelp') }),
    ...points.map((point, index) => mark(point, x(index), y)),
    timeAxis(points, x, area.bottom),
    linesAt(RIGHT_PX, FIRST_LINE_PX, centreLines, { 'text-anchor': 'end', ...painted({ fill: 'slate' }) }),
    linesAt(0, area.bottom + NOTE_PX, noteLines, painted({ fill: 'slate' })),
  ]);
}

/** The short name of each point, and below those that follow each other in a group the name of that. */
function timeAxis(points: readonly TimePoint[], x: (index: number) => number, bottom: number): string {
  const starts = points.flatMap(({ group }, index) => (points[index - 1]?.group === group ? [] : [index]));
  const groups = starts.map((start, at) => {
    const end = (starts[at + 1] ?? points.length) - 1;
    return { name: points[start]?.group ?? '', start, middle: (x(start) + x(end)) / 2 };
  });
  const between = groups.slice(1).map(({ start }) => (x(start - 1) + x(start)) / 2);
  return [
    element(
      'g',
      lined('line', 'solid', 1),
      ...between.map((at) => element('line', { x1: at, x2: at, y1: bottom, y2: bottom + MARKS_PX + 4 })),
    ),
    element(
      'g',
      { 'text-anchor': 'middle', ...painted({ fill: 'slate' }) },
      ...points.map(({ mark: name }, index) => textAt(x(index), bottom + MARKS_PX, name)),
      ...groups.map(({ name, middle }) => textAt(middle, bottom + GROUPS_PX, name)),
    ),
  ].join('');
}

function mark(
  { value, isSignal, isProvisional }: TimePoint,
  x: number,
  y: (value: number) => number,
): string {
  if (value === null) return '';
  const look = painted(isProvisional ? { fill: 'paper', stroke: 'kelp' } : { fill: 'kelp', stroke: 'kelp' });
  return isSignal
    ? element('path', {
        d: `M${inTenths(x)} ${inTenths(y(value) - 7)}l7 7l-7 7l-7-7z`,
        ...look,
        'stroke-width': 1.5,
      })
    : element('circle', { cx: x, cy: y(value), r: 4, ...look, 'stroke-width': 1.5 });
}

function extent({ points, centre, domain }: ControlChartModel): [number, number] {
  const values = [
    ...(domain ?? []),
    ...(centre === null ? [] : [centre.at]),
    ...points.flatMap(({ value, lower, upper }) => [value, lower, upper].filter((each) => each !== null)),
  ];
  if (values.length === 0) return [0, 1];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return low === high ? [low - 1, high + 1] : [low, high];
}

function inWords({ points, centre, places, signals }: ControlChartModel): string {
  const values = points.map(
    ({ label, months, value, isProvisional }) =>
      `${label}${months === undefined ? '' : ` (${months})`}: ${value === null ? 'no value' : numberText(value, places)}${isProvisional ? ' (provisional)' : ''}`,
  );
  return [
    `${values.join('; ')}.`,
    ...(centre === null ? [] : [`${centre.label}.`]),
    signals.length === 0 ? 'No rule is met.' : `${signals.join('. ')}.`,
  ].join(' ');
}
