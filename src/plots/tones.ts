import type { Attributes } from './svg.js';

/**
 * Colours of drawings on white or light paper; marks have a contrast of at least 3 to it, text of at least 4.5. None has a
 * meaning of its own: a label, a dash or a shape says what a mark is.
 */
export const TONES = {
  ink: '#20242b',
  slate: '#565f69',
  line: '#8b8578',
  hair: '#d9d4c8',
  shell: '#f2efe8',
  paper: '#ffffff',
  kelp: '#2f5d50',
  rust: '#9c3d22',
  amber: '#8a5a00',
  plum: '#5b3f73',
} as const;

export type Tone = keyof typeof TONES;

/** How lines differ without colour. */
const DASHES = { dashed: '6 4', dotted: '2 3' } as const;
export type Dash = 'solid' | keyof typeof DASHES;

/**
 * Fill and stroke as presentation attributes, with classes by which a style sheet may put its own in their place.
 *
 * @example painted({ fill: 'kelp' }) -> { class: 'fill-kelp', fill: '#2f5d50' }
 */
export function painted({ fill, stroke }: { readonly fill?: Tone; readonly stroke?: Tone }): Attributes {
  const classes = [
    ...(fill === undefined ? [] : [`fill-${fill}`]),
    ...(stroke === undefined ? [] : [`stroke-${stroke}`]),
  ];
  return {
    class: classes.join(' '),
    fill: fill === undefined ? 'none' : TONES[fill],
    ...(stroke === undefined ? {} : { stroke: TONES[stroke] }),
  };
}

/** A line's look. */
export function lined(tone: Tone, dash: Dash = 'solid', widthPx = 1.5): Attributes {
  const dashes: Attributes = dash === 'solid' ? {} : { 'stroke-dasharray': DASHES[dash] };
  return { ...painted({ stroke: tone }), 'stroke-width': widthPx, ...dashes };
}
