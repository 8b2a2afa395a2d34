import { scaleLinear } from 'd3-scale';
import { drawing, element, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
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

const ROW_PX = 46;
const LINE_PX = 16;
const LETTER_PX = 6.2;
const BAR_PX = 18;
const TOP_PX = 6;
const RIGHT_PX = PLOT_WIDTH_PX - 1;

/** A funnel from step to step: bars from zero, under each the part of it that left or is still there. */
export function stepBars(model: StepBarsModel): Plot {
  const { steps } = model;
  const x = scaleLinear([0, Math.max(1, ...steps.map(({ count }) => count))], [0, RIGHT_PX]);
  const tops: number[] = [];
  const height = steps.reduce((top, step) => {
    tops.push(top);
    return top + ROW_PX + (isLong(step) ? LINE_PX : 0);
  }, TOP_PX);
  return drawing(model, height, inWords(steps), [
    ...steps.map((step, index) => row(step, tops[index] ?? 0, x)),
    element('line', { x1: 0.5, x2: 0.5, y1: 0, y2: height, ...lined('line') }),
  ]);
}

/** Whether what was lost needs a line of its own; letters are about half as wide as they are high. */
function isLong({ label, count, left, open }: Step): boolean {
  return (`${label}: ${count} `.length + lossWords(left, open).length) * LETTER_PX > PLOT_WIDTH_PX;
}

function row(step: Step, top: number, x: (count: number) => number): string {
  const { label, count, left, open } = step;
  const last = isLong(step) ? top + LINE_PX : top;
  const barTop = last + 19;
  const stayed = count - left - open;
  const segment = (from: number, to: number, attributes: ReturnType<typeof painted>): string =>
    to <= from
      ? ''
      : element('rect', { x: x(from), y: barTop, width: x(to) - x(from), height: BAR_PX, ...attributes });
  return element(
    'g',
    {},
    textAt(6, top + 13, `${label}: ${count}`, { ...painted({ fill: 'ink' }), 'font-weight': 600 }),
    textAt(RIGHT_PX, last + 13, lossWords(left, open), {
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
