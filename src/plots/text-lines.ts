import { textAt } from './svg.js';
import type { Attributes } from './svg.js';

/** From one line of text to the next. */
export const LINE_PX = 16;
/** Widths of letters at 13 px, each kind by its widest usual one. */
const NARROW_PX = 3.9;
const LETTER_PX = 6.8;
const CAPITAL_PX = 7.9;
const WIDE_PX = 10.2;
const NARROW = /[ ',.:;!()[\]/|Ifijlrt-]/;
const WIDE = /[%@MWmw]/;
/** Between a line and its name. */
const GAP_PX = 5;

/** About how wide a text of a drawing is, rather too much than too little. @example widthOf('all') -> 14.6 */
export function widthOf(text: string): number {
  return [...text].reduce((sum, letter) => sum + widthOfLetter(letter), 0);
}

function widthOfLetter(letter: string): number {
  if (NARROW.test(letter)) return NARROW_PX;
  if (WIDE.test(letter)) return WIDE_PX;
  return /[A-Z&]/.test(letter) ? CAPITAL_PX : LETTER_PX;
}

/**
 * A text broken between words into lines that fit into a room; a longer word has a line of its own.
 *
 * @example linesOf('baseline assessment done', 120) -> ['baseline', 'assessment done']
 */
export function linesOf(text: string, roomPx: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last === undefined || widthOf(longer) > roomPx) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

/** Lines of text one below the other, the first at `y`. */
export function linesAt(x: number, y: number, lines: readonly string[], attributes: Attributes = {}): string {
  return lines.map((line, index) => textAt(x, y + index * LINE_PX, line, attributes)).join('');
}

/** A text beside an upright line, or above it where the drawing has no room beside. */
export interface BesideLine {
  /** For an element of text. */
  readonly place: { readonly x: number; readonly 'text-anchor': 'start' | 'end' };
  readonly from: number;
  readonly to: number;
  readonly isAbove: boolean;
}

/**
 * Where a text stands that names an upright line, on the side asked for as far as the drawing has room.
 *
 * @example besideLine(20, 'no change', 'left', 340) -> from 0, above the line
 */
export function besideLine(
  x: number,
  text: string,
  side: 'left' | 'right',
  drawingWidthPx: number,
): BesideLine {
  const width = widthOf(text);
  if (side === 'left') {
    return x - GAP_PX - width >= 0
      ? { place: { x: x - GAP_PX, 'text-anchor': 'end' }, from: x - GAP_PX - width, to: x, isAbove: false }
      : { place: { x: 0, 'text-anchor': 'start' }, from: 0, to: width, isAbove: true };
  }
  return x + GAP_PX + width <= drawingWidthPx
    ? { place: { x: x + GAP_PX, 'text-anchor': 'start' }, from: x, to: x + GAP_PX + width, isAbove: false }
    : {
        place: { x: drawingWidthPx, 'text-anchor': 'end' },
        from: drawingWidthPx - width,
        to: drawingWidthPx,
        isAbove: true,
      };
}
