import { scaleLinear } from 'd3-scale';
import { bottomAxis, leftAxis, numberText } from './axes.js';
import type { Area } from './axes.js';
import { drawing, element, inTenths, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { lined, painted } from './tones.js';

/** What had become of everybody by a day, in percent of all; the rest is still waiting. */
export interface IncidencePoint {
  readonly day: number;
  readonly reached: number;
  readonly left: number;
}

export interface IncidenceModel extends PlotFrame {
  /** In the order of days; a step holds until the next, and nothing is drawn beyond the last. */
  readonly points: readonly IncidencePoint[];
  /** Days at which the estimate is shown with its interval. */
  readonly marks: readonly {
    readonly day: number;
    readonly percent: number;
    readonly low: number;
    readonly high: number;
  }[];
  readonly ticks: readonly number[];
  readonly words: { readonly reached: string; readonly waiting: string; readonly left: string };
  readonly days: string;
}

const AREA: Area = { left: 34, right: PLOT_WIDTH_PX - 102, top: 34, bottom: 264 };
const HEIGHT_PX = 308;

/** Cumulative incidence with competing reasons: who reached the event from below, who left from above, between them who waits. */
export function incidenceBands(model: IncidenceModel): Plot {
  const { points, marks, ticks, words, days } = model;
  const lastDay = Math.max(...ticks, 1);
  const x = scaleLinear([0, lastDay], [AREA.left, AREA.right]);
  const y = scaleLinear([0, 100], [AREA.bottom, AREA.top]);
  const shown = [{ day: 0, reached: 0, left: 0 }, ...points.filter(({ day }) => day <= lastDay)];
  const band = (from: number, edge: (point: IncidencePoint) => number): string =>
    stepBand(
      shown.map((point) => ({ x: x(point.day), y: y(edge(point)) })),
      y(from),
    );
  const last = shown[shown.length - 1] ?? { day: 0, reached: 0, left: 0 };
  const waiting = 100 - last.reached - last.left;
  const labels = apart([
    { at: y(last.reached / 2), text: `${words.reached} ${percent(last.reached)}` },
    { at: y(last.reached + waiting / 2), text: `${words.waiting} ${percent(waiting)}` },
    { at: y(100 - last.left / 2), text: `${words.left} ${percent(last.left)}` },
  ]);
  return drawing(model, HEIGHT_PX, inWords(model, last), [
    leftAxis(y, AREA, [0, 25, 50, 75, 100], '% of referrals'),
    element('path', {
      d: band(0, ({ reached }) => reached),
      ...painted({ fill: 'kelp' }),
      'fill-opacity': 0.75,
    }),
    element('path', {
      d: band(100, ({ left }) => 100 - left),
      ...painted({ fill: 'line', stroke: 'slate' }),
      'fill-opacity': 0.3,
      'stroke-dasharray': '6 4',
    }),
    ...marks.map(({ day, percent: at, low, high }) =>
      element(
        'g',
        { ...lined('ink') },
        element('line', { x1: x(day), x2: x(day), y1: y(low), y2: y(high) }),
        element('line', { x1: x(day) - 4, x2: x(day) + 4, y1: y(low), y2: y(low) }),
        element('line', { x1: x(day) - 4, x2: x(day) + 4, y1: y(high), y2: y(high) }),
        element('circle', { cx: x(day), cy: y(at), r: 4, ...painted({ fill: 'paper', stroke: 'ink' }) }),
      ),
    ),
    bottomAxis(x, AREA, ticks, days),
    textAt(AREA.right + 8, AREA.top - 14, `on day ${last.day}:`, painted({ fill: 'slate' })),
    ...labels.map(({ at, text }) => textAt(AREA.right + 8, at + 4, text, painted({ fill: 'ink' }))),
  ]);
}

/** The area between a level and steps, each of which holds until the next; nothing is written where nothing changes. */
function stepBand(points: readonly { readonly x: number; readonly y: number }[], level: number): string {
  let at = inTenths(level);
  const steps = points.map(({ x, y }) => {
    const next = inTenths(y);
    if (next === at) return '';
    at = next;
    return `H${inTenths(x)}V${next}`;
  });
  const [first, last] = [points[0]?.x ?? 0, points.at(-1)?.x ?? 0];
  return `M${inTenths(first)} ${inTenths(level)}${steps.join('')}H${inTenths(last)}V${inTenths(level)}Z`;
}

const LABEL_HEIGHT_PX = 16;

/** Labels from the bottom up, none on another and none beyond the area. */
function apart<Label extends { readonly at: number }>(labels: readonly Label[]): readonly Label[] {
  const placed: Label[] = [];
  let ceiling = AREA.bottom;
  for (const label of labels) {
    const at = Math.min(label.at, ceiling);
    placed.push({ ...label, at });
    ceiling = at - LABEL_HEIGHT_PX;
  }
  const first = placed[placed.length - 1];
  const lift = first === undefined ? 0 : Math.max(0, AREA.top - first.at);
  return placed.map((label) => ({ ...label, at: label.at + lift }));
}

function inWords({ marks, words, days }: IncidenceModel, last: IncidencePoint): string {
  const at = marks.map(
    ({ day, percent: value, low, high }) =>
      `by day ${day} ${percent(value)} (95 % interval ${numberText(low, 1)} to ${numberText(high, 1)})`,
  );
  return (
    `${days}. ${words.reached}: ${at.join('; ')}. By day ${last.day} ${percent(last.left)} ${words.left} and ` +
    `${percent(100 - last.reached - last.left)} ${words.waiting}.`
  );
}

function percent(value: number): string {
  return `${numberText(value, 1)} %`;
}
