import { scaleLinear } from 'd3-scale';
import { bottomAxis, leftAxis, numberText } from './axes.js';
import type { Area } from './axes.js';
import { drawing, element, PLOT_WIDTH_PX, textAt } from './svg.js';
import type { Plot, PlotFrame } from './svg.js';
import { besideLine, widthOf } from './text-lines.js';
import { lined, painted } from './tones.js';
import type { Dash } from './tones.js';

export interface ChangeBarsModel extends PlotFrame {
  /** Classes of equal width in the order of their ends; each holds the end that is the lesser improvement. */
  readonly classes: readonly { readonly from: number; readonly to: number; readonly count: number }[];
  /** On which side improvement lies; it is always drawn on the right. */
  readonly betterWhen: 'higher' | 'lower';
  /** The change that matters, with its sign; null where none is known. */
  readonly mid: { readonly at: number; readonly label: string } | null;
  readonly axis: string;
}

const AREA: Area = { left: 34, right: PLOT_WIDTH_PX - 10, top: 76, bottom: 252 };
const HEIGHT_PX = 298;
const COUNTED = 'people';
/** Each name has a line of its own above the area, so that none meets another. */
const SIDE_NAME_PX = 12;
const MID_NAME_PX = 28;
const NO_CHANGE_PX = 44;

/** How changes spread: bars from zero, the line of no change and that of the smallest change that matters. */
export function changeBars(model: ChangeBarsModel): Plot {
  const { classes, betterWhen, mid, axis } = model;
  const ends = [0, ...(mid === null ? [] : [mid.at]), ...classes.flatMap(({ from, to }) => [from, to])];
  const across: [number, number] = [Math.min(...ends), Math.max(...ends)];
  if (across[0] === across[1]) across[1] = across[0] + 1;
  const x = scaleLinear(across, betterWhen === 'higher' ? [AREA.left, AREA.right] : [AREA.right, AREA.left]);
  const most = Math.max(1, ...classes.map(({ count }) => count));
  const y = scaleLinear([0, most], [AREA.bottom, AREA.top]);
  return drawing(model, HEIGHT_PX, inWords(model), [
    leftAxis(y, AREA, wholeTicks(most), COUNTED),
    element(
      'g',
      { ...painted({ fill: 'kelp' }), 'fill-opacity': 0.75 },
      ...classes.map(({ from, to, count }) =>
        element('rect', {
          x: Math.min(x(from), x(to)) + 0.75,
          width: Math.max(0.5, Math.abs(x(to) - x(from)) - 1.5),
          y: y(count),
          height: AREA.bottom - y(count),
        }),
      ),
    ),
    // Named on the side away from the threshold.
    marker({ x: x(0), label: 'no change', nameY: NO_CHANGE_PX, dash: 'solid', side: 'left' }),
    mid === null
      ? ''
      : marker({ x: x(mid.at), label: mid.label, nameY: MID_NAME_PX, dash: 'dashed', side: 'right' }),
    textAt(AREA.right, SIDE_NAME_PX, 'improvement on the right', {
      'text-anchor': 'end',
      ...painted({ fill: 'slate' }),
    }),
    bottomAxis(x, AREA, x.ticks(5), axis),
  ]);
}

interface Marker {
  readonly x: number;
  readonly label: string;
  readonly nameY: number;
  readonly dash: Dash;
  readonly side: 'left' | 'right';
}

/** A line down beside its name, or from below it; and from below the name of the axis where that stands there. */
function marker({ x, label, nameY, dash, side }: Marker): string {
  const { place, isAbove } = besideLine(x, label, side, PLOT_WIDTH_PX);
  const named = isAbove ? nameY + 4 : nameY - 8;
  const top = x < widthOf(COUNTED) + 4 ? Math.max(named, AREA.top - 8) : named;
  const { x: at, ...anchor } = place;
  return element(
    'g',
    {},
    element('line', { x1: x, x2: x, y1: top, y2: AREA.bottom, ...lined('ink', dash) }),
    textAt(at, nameY, label, { ...anchor, ...painted({ fill: 'ink' }) }),
  );
}

/** People come in whole numbers. */
function wholeTicks(most: number): readonly number[] {
  return scaleLinear([0, most], [0, 1])
    .ticks(4)
    .filter((tick) => Number.isInteger(tick));
}

function inWords({ classes, mid, betterWhen }: ChangeBarsModel): string {
  const filled = classes.filter(({ count }) => count > 0);
  const counts = filled.map(({ from, to, count }) =>
    betterWhen === 'higher'
      ? `${numberText(from)} to below ${numberText(to)}: ${count}`
      : `above ${numberText(from)} up to ${numberText(to)}: ${count}`,
  );
  return `${counts.join('; ')}.${mid === null ? '' : ` Marked: no change, and ${mid.label}.`}`;
}
