import { scaleLinear } from 'd3-scale';
import { drawing, element, PLOT_WIDTH_PX } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { LINE_PX, linesAt, linesOf } from './text-lines.js';
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

const BAR_PX = 14;
const GAP_PX = 10;
const TOP_PX = 4;
const LEFT_PX = 1;
const WORDS_PX = LEFT_PX + 5;

/** Counts as bars from zero, one row each under its name, in the order given. */
export function countBars(model: CountBarsModel): Plot {
  const { rows } = model;
  const most = Math.max(1, ...rows.map(({ value }) => value ?? 0));
  const x = scaleLinear([0, most], [LEFT_PX, PLOT_WIDTH_PX]);
  let top = TOP_PX;
  const drawn = rows.map(({ label, words, value }) => {
    const lines = linesOf(`${label}: ${words}`, PLOT_WIDTH_PX - WORDS_PX);
    const name = linesAt(WORDS_PX, top + 14, lines, painted({ fill: 'ink' }));
    const y = top + lines.length * LINE_PX + 3;
    top = y + BAR_PX + GAP_PX - 3;
    if (value === null || value === 0) return name;
    const bar = { x: LEFT_PX, y, width: x(value) - LEFT_PX, height: BAR_PX };
    return element('g', {}, name, element('rect', { ...bar, ...painted({ fill: 'kelp' }) }));
  });
  return drawing(model, top, inWords(rows), [
    ...drawn,
    element('line', { x1: 0.5, x2: 0.5, y1: 0, y2: top, ...lined('line') }),
  ]);
}

function inWords(rows: readonly CountRow[]): string {
  return `${rows.map(({ label, words }) => `${label}: ${words}`).join('; ')}.`;
}
