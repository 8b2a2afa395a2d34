import { scaleLinear } from 'd3-scale';
import { curveStep, line } from 'd3-shape';
import { leftAxis, numberText } from './axes.js';
import type { Area } from './axes.js';
import { drawing, element, inTenths, PATH_DIGITS, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { lined, painted } from './tones.js';

/** One period. */
export interface TimePoint {
  readonly label: string;
  /** Which months it is, below its label. */
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
  /** The signals in words; empty where no rule is met. */
  readonly signals: readonly string[];
}

const AREA: Area = { left: 40, right: PLOT_WIDTH_PX - 14, top: 34, bottom: 214 };
const HEIGHT_PX = 298;
const LABEL_LINE_PX = 12;

/** Values over time, left to right, about their centre and within their limits; what meets a rule is another shape. */
export function controlChart(model: ControlChartModel): Plot {
  const { points, centre, axis } = model;
  const x = scaleLinear([0, Math.max(1, points.length - 1)], [AREA.left + 10, AREA.right - 10]);
  const y = scaleLinear(extent(model), [AREA.bottom, AREA.top]).nice(5);
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
  return drawing(model, HEIGHT_PX, inWords(model), [
    leftAxis(y, AREA, y.ticks(5), axis),
    element('line', { x1: AREA.left, x2: AREA.right, y1: AREA.bottom, y2: AREA.bottom, ...lined('line') }),
    ...(hasLimits
      ? [
          element('path', { d: limit('upper'), ...lined('slate', 'dashed', 1) }),
          element('path', { d: limit('lower'), ...lined('slate', 'dashed', 1) }),
        ]
      : []),
    centre === null
      ? ''
      : element('line', {
          x1: AREA.left,
          x2: AREA.right,
          y1: y(centre.at),
          y2: y(centre.at),
          ...lined('ink', 'solid', 1),
        }),
    element('path', { d: path, ...lined('kelp') }),
    ...points.map((point, index) => mark(point, x(index), y)),
    element(
      'g',
      { 'text-anchor': 'end', 'font-size': 11, ...painted({ fill: 'slate' }) },
      ...points.map((point, index) => labelBelow(point, x(index))),
    ),
    textAt(AREA.right, 12, centre === null ? '' : centre.label, {
      'text-anchor': 'end',
      ...painted({ fill: 'slate' }),
    }),
  ]);
}

/** The label of a point, and its months below that, turned so that all have room. */
function labelBelow({ label, months }: TimePoint, x: number): string {
  const y = AREA.bottom + 14;
  const turned = { transform: `rotate(-45 ${Math.round(x)} ${y})` };
  return [
    textAt(x, y, label, turned),
    ...(months === undefined ? [] : [textAt(x, y + LABEL_LINE_PX, months, turned)]),
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
