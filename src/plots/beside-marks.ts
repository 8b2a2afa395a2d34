import { LINE_PX, widthOf } from './text-lines.js';

/** A mark and the text that names it. */
export interface NamedMark {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** Where a text stands: the room that it takes, and the middle of its line. */
export interface TextPlace extends NamedMark {
  readonly middle: number;
  readonly room: Box;
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const TEXT_PX = LINE_PX - 2;
const MARK_PX = 6;
const GAP_PX = 9;
/** A text moves up or down by half a line at a time. */
const STEP_PX = LINE_PX / 2;

/**
 * Finds for each text a place beside its mark where it covers no other mark and no other text: to the right, to the left, or
 * as little higher or lower as there is room; a text that is too wide for its side reaches over to the other.
 *
 * @param within what texts keep in
 * @returns in the order of the marks; where nothing is free, to the right of the mark
 */
export function besideMarks(marks: readonly NamedMark[], within: Box): readonly TextPlace[] {
  const taken: Box[] = marks.map(({ x, y }) => ({
    left: x - MARK_PX,
    right: x + MARK_PX,
    top: y - MARK_PX,
    bottom: y + MARK_PX,
  }));
  return marks.map((mark) => {
    const places = shiftsIn(within).flatMap((shift) => [
      placeAt(mark, 'right', shift, within),
      placeAt(mark, 'left', shift, within),
    ]);
    const free = places.find(
      ({ room }) =>
        room.top >= within.top && room.bottom <= within.bottom && !taken.some((box) => meet(room, box)),
    );
    const place = free ?? placeAt(mark, 'right', 0, within);
    taken.push(place.room);
    return place;
  });
}

/** How far a text may stand off, up and down, the nearest first. */
function shiftsIn({ top, bottom }: Box): readonly number[] {
  const count = Math.floor((bottom - top) / STEP_PX);
  return [
    0,
    ...Array.from({ length: count }, (_, index) => (index + 1) * STEP_PX).flatMap((by) => [-by, by]),
  ];
}

function placeAt(mark: NamedMark, side: 'left' | 'right', shift: number, within: Box): TextPlace {
  const width = widthOf(mark.text);
  const asked = side === 'right' ? mark.x + GAP_PX : mark.x - GAP_PX - width;
  const left = Math.max(within.left, Math.min(asked, within.right - width));
  const middle = mark.y + shift;
  const room = { left, right: left + width, top: middle - TEXT_PX / 2, bottom: middle + TEXT_PX / 2 };
  return { ...mark, middle, room };
}

/** Whether two boxes cover each other; those that only touch do not. */
function meet(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
