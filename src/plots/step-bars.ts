import { scaleLinear } from 'd3-scale';
import { drawing, element, PLOT_WIDTH_PX } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { LINE_PX, linesAt, linesOf, widthOf } from './text-lines.js';
import { lined, painted } from './tones.js';

/** One step: how many reached it, and what became of the others of the step before. */
export interface Step {
  readonly label: string;
  readonly count: number;
  /** Left after the step, and still at it. */
  readonly left: number;
  readonly open: number;
}

export interface StepBarsModel extends PlotFrame {
  readonly steps: readonly Step[];
}

const BAR_PX = 18;
const GAP_PX = 12;
const TOP_PX = 6;
const RIGHT_PX = PLOT_WIDTH_PX - 1;
const ROOM_PX = RIGHT_PX - 6;

/** A funnel from step to step: bars from zero, under each the part of it that left or is still there. */
export function stepBars(model: StepBarsModel): Plot {
  const { steps } = model;
  const x = scaleLinear([0, Math.max(1, ...steps.map(({ count }) => count))], [0, RIGHT_PX]);
  const tops: number[] = [];
  const height = steps.reduce((top, step) => {
    tops.push(top);
    return top + wordsOf(step).lineCount * LINE_PX + BAR_PX + GAP_PX;
  }, TOP_PX);
  return drawing(model, height, inWords(steps), [
    ...steps.map((step, index) => row(step, tops[index] ?? 0, x)),
    element('line', { x1: 0.5, x2: 0.5, y1: 0, y2: height, ...lined('line') }),
  ]);
}

interface StepWords {
  readonly name: readonly string[];
  readonly loss: readonly string[];
  /** Of both together: what was lost stands beside the name where there is room, else below it. */
  readonly lineCount: number;
}

function wordsOf({ label, count, left, open }: Step): StepWords {
  const [title, lost] = [`${label}: ${count}`, lossWords(left, open)];
  const [name, loss] = [linesOf(title, ROOM_PX), lost === '' ? [] : linesOf(lost, ROOM_PX)];
  const isOneLine = widthOf(`${title}  ${lost}`) <= ROOM_PX;
  return { name, loss, lineCount: isOneLine ? 1 : name.length + loss.length };
}

function row(step: Step, top: number, x: (count: number) => number): string {
  const { count, left, open } = step;
  const { name, loss, lineCount } = wordsOf(step);
  const barTop = top + lineCount * LINE_PX + 2;
  const stayed = count - left - open;
  const segment = (from: number, to: number, attributes: ReturnType<typeof painted>): string =>
    to <= from
      ? ''
      : element('rect', { x: x(from), y: barTop, width: x(to) - x(from), height: BAR_PX, ...attributes });
  return element(
    'g',
    {},
    linesAt(6, top + 13, name, { ...painted({ fill: 'ink' }), 'font-weight': 600 }),
    linesAt(RIGHT_PX, top + 13 + (lineCount - loss.length) * LINE_PX, loss, {
      'text-anchor': 'end',
      ...painted({ fill: 'slate' }),
    }),
    segment(0, stayed, painted({ fill: 'kelp' })),
    segment(stayed, stayed + open, {
      ...painted({ fill: 'shell', stroke: 'kelp' }),
      'stroke-dasharray': '6 4',
    }),
    segment(stayed + open, count, {
      ...painted({ fill: 'paper', stroke: 'slate' }),
      'stroke-dasharray': '2 3',
    }),
  );
}

function lossWords(left: number, open: number): string {
  return [
    ...(open > 0 ? [`${open} still here (dashed)`] : []),
    ...(left > 0 ? [`${left} left after it (dotted)`] : []),
  ].join(', ');
}

function inWords(steps: readonly Step[]): string {
  return `${steps
    .map(({ label, count, left, open }) => {
      const loss = [
        ...(open > 0 ? [`${open} still at it`] : []),
        ...(left > 0 ? [`${left} left after it`] : []),
      ];
      return `${label}: ${count}${loss.length === 0 ? '' : ` (${loss.join(', ')})`}`;
    })
    .join('; ')}.`;
}
