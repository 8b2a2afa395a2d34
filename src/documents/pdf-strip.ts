import type { Strip, StripRow } from './document-model.js';
import type { Paper } from './sheet-of-paper.js';

const SLATE = '#565f69';
const KELP = '#2f5d50';
const TICK_PT = 7;
/** Left free on both sides, so that a dot at an end is whole. */
const INSET_PT = 8;
const DOT_PT = 2.2;
const END_PT = 2;

/** Where a strip stands on a line of a table. */
export interface StripPlace {
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly height: number;
}

/** The head of the column: what its axis runs from and to, its middle, and the names of its lines. */
export function stripHead({ domain: [low, high], axis, lines }: Strip): string {
  return [`${low} to ${high} ${axis}`, ...lines.map(({ label }) => `line: ${label}`)].join('; ');
}

/** Ends of the axis with a short mark each, at the foot of the head. */
export function drawStripHead({ doc }: Paper, { domain }: Strip, place: StripPlace): void {
  const { left, right, foot } = edges(place);
  doc.moveTo(left, foot).lineTo(right, foot).lineWidth(0.5).strokeColor(SLATE).stroke();
  for (const x of [left, (left + right) / 2, right]) {
    doc
      .moveTo(x, foot - 3)
      .lineTo(x, foot)
      .stroke();
  }
  doc.font('regular').fontSize(TICK_PT).fillColor(SLATE);
  const middle = (domain[0] + domain[1]) / 2;
  for (const [value, x] of [
    [domain[0], left],
    [middle, (left + right) / 2],
    [domain[1], right],
  ] as const) {
    doc.text(String(value), x - 15, foot - 12, { width: 30, align: 'center', lineBreak: false });
  }
}

/** The value and interval of one row, over the lines of all rows. */
export function drawStrip({ doc }: Paper, strip: Strip, row: StripRow, place: StripPlace): void {
  const { left, right } = edges(place);
  const [low, high] = strip.domain;
  const x = (value: number): number =>
    left + ((Math.min(Math.max(value, low), high) - low) * (right - left)) / (high - low);
  const y = place.top + place.height / 2;
  for (const { at } of strip.lines) {
    doc
      .moveTo(x(at), place.top)
      .lineTo(x(at), place.top + place.height)
      .lineWidth(0.7)
      .strokeColor(SLATE)
      .stroke();
  }
  const { value, interval } = row;
  if (interval !== null) {
    doc.lineWidth(1).strokeColor(KELP);
    doc.moveTo(x(interval.low), y).lineTo(x(interval.high), y).stroke();
    for (const end of [x(interval.low), x(interval.high)]) {
      doc
        .moveTo(end, y - END_PT)
        .lineTo(end, y + END_PT)
        .stroke();
    }
  }
  if (value !== null) doc.circle(x(value), y, DOT_PT).fill(KELP);
}

function edges({ left, width, top, height }: StripPlace): {
  readonly left: number;
  readonly right: number;
  readonly foot: number;
} {
  return { left: left + INSET_PT, right: left + width - INSET_PT, foot: top + height - 1 };
}
