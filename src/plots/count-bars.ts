import { scaleLinear } from 'd3-scale';
import { drawing, element, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { lined, painted } from './tones.js';

/** One bar under its name. */
export interface CountRow {
  readonly label: string;
  /** The count as it is read, or why there is none. */
  readonly words: string;
  /** Null where there is nothing to draw. */
  readonly value: number | null;
}

export interface CountBarsModel extends PlotFrame {
  readonly rows: readonly CountRow[];
}

const ROW_PX = 40;
const BAR_PX = 14;
const TOP_PX = 4;
const LEFT_PX = 1;

/** Counts as bars from zero, one row each under its name, in the order given. */
export function countBars(model: CountBarsModel): Plot {
  const { rows } = model;
  const most = Math.max(1, ...rows.map(({ value }) => value ?? 0));
  const x = scaleLinear([0, most], [LEFT_PX, PLOT_WIDTH_PX]);
  const height = TOP_PX + rows.length * ROW_PX;
  return drawing(model, height, inWords(rows), [
    ...rows.map(({ label, words, value }, index) => {
      const top = TOP_PX + index * ROW_PX;
      const name = textAt(LEFT_PX + 5, top + 14, `${label}: ${words}`, painted({ fill: 'ink' }));
      if (value === null || value === 0) return name;
      const bar = { x: LEFT_PX, y: top + 19, width: x(value) - LEFT_PX, height: BAR_PX };
      return element('g', {}, name, element('rect', { ...bar, ...painted({ fill: 'kelp' }) }));
    }),
    element('line', { x1: 0.5, x2: 0.5, y1: 0, y2: height, ...lined('line') }),
  ]);
}

function inWords(rows: readonly CountRow[]): string {
  return `${rows.map(({ label, words }) => `${label}: ${words}`).join('; ')}.`;
}
