/** A mark and the text that names it. */
export interface NamedMark {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** Where a text stands: its end that is nearer to the mark, on the line of the letters; and the room that it takes. */
export interface TextPlace {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'end';
  readonly room: Box;
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Of a letter, on the wide side, as nothing here can measure one. */
const LETTER_PX = 6.6;
const LINE_PX = 14;
const MARK_PX = 5;
const GAP_PX = 9;
/** From the middle of a line to where its letters stand. */
const BASE_PX = 4;
/** Lines up or down that a text may stand off, the nearest first. */
const SHIFTS = [0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5];

/**
 * Finds for each text a place beside its mark where it covers no other mark and no other text: to the right, to the left, or
 * some lines higher or lower.
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
    const places = SHIFTS.flatMap((lines) => [placeAt(mark, 'start', lines), placeAt(mark, 'end', lines)]);
    const free = places.find(({ room }) => isInside(room, within) && !taken.some((box) => meet(room, box)));
    const place = free ?? placeAt(mark, 'start', 0);
    taken.push(place.room);
    return place;
  });
}

function placeAt({ x, y, text }: NamedMark, anchor: TextPlace['anchor'], lines: number): TextPlace {
  const middle = y + lines * LINE_PX;
  const from = anchor === 'start' ? x + GAP_PX : x - GAP_PX;
  const width = text.length * LETTER_PX;
  const left = anchor === 'start' ? from : from - width;
  const room = { left, right: left + width, top: middle - LINE_PX / 2, bottom: middle + LINE_PX / 2 };
  return { x: from, y: middle + BASE_PX, anchor, room };
}

function isInside(box: Box, within: Box): boolean {
  return (
    box.left >= within.left &&
    box.right <= within.right &&
    box.top >= within.top &&
    box.bottom <= within.bottom
  );
}

/** Whether two boxes cover each other; those that only touch do not. */
function meet(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
