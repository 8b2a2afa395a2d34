import type { ScaleLinear } from 'd3-scale';
import { element, textAt } from './svg.js';
import { lined, painted } from './tones.js';

export type Scale = ScaleLinear<number, number>;

/** Where the axes of a drawing lie, in its own units. */
export interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const INK = painted({ fill: 'ink' });
const SLATE = painted({ fill: 'slate' });

/** An axis below the area with its ticks and its name. */
export function bottomAxis(
  scale: Scale,
  { left, right, bottom }: Area,
  ticks: readonly number[],
  name: string,
): string {
  return element(
    'g',
    {},
    element(
      'g',
      lined('line'),
      element('line', { x1: left, x2: right, y1: bottom, y2: bottom }),
      ...ticks.map((tick) =>
        element('line', { x1: scale(tick), x2: scale(tick), y1: bottom, y2: bottom + 5 }),
      ),
    ),
    element(
      'g',
      { 'text-anchor': 'middle', ...SLATE },
      ...ticks.map((tick) => textAt(scale(tick), bottom + 18, numberText(tick))),
    ),
    textAt((left + right) / 2, bottom + 36, name, { 'text-anchor': 'middle', ...INK }),
  );
}

/** An axis on the left with hairlines across the area; its name stands above it, to be read without turning the head. */
export function leftAxis(
  scale: Scale,
  { left, right, top }: Area,
  ticks: readonly number[],
  name: string,
): string {
  return element(
    'g',
    {},
    textAt(0, top - 12, name, INK),
    element(
      'g',
      lined('hair', 'solid', 1),
      ...ticks.map((tick) => element('line', { x1: left, x2: right, y1: scale(tick), y2: scale(tick) })),
    ),
    element(
      'g',
      { 'text-anchor': 'end', ...SLATE },
      ...ticks.map((tick) => textAt(left - 6, scale(tick) + 4, numberText(tick))),
    ),
  );
}

/** A number on an axis or in words, with a true minus. @example numberText(-2.5) -> '−2.5' */
export function numberText(value: number, places?: number): string {
  const text = places === undefined ? String(Number(value.toPrecision(12))) : value.toFixed(places);
  return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '\u2212');
}
