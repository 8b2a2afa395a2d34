import type { Paper } from './sheet-of-paper.js';

/** Of the paper, at most for one column while others want room. */
const WIDEST_SHARE = 0.25;
/** What a column gets at most beyond what it wants. */
const MOST_SPARE_PT = 28;
/** Where a line may end: after a space, or after the hyphen of a word. */
const BREAKS = / |(?<=[a-z]-)/;

/**
 * Each column gets its longest word, of numbers and intervals its longest text, which is not parted, then up to its fair share as much as its longest text and half of its head want, then
 * as much as long texts want, and a little more where there is room: numbers far apart are hard to read along.
 */
export function columnWidths(
  { doc, width, scale }: Pick<Paper, 'doc' | 'width' | 'scale'>,
  lines: readonly (readonly string[])[],
  type: { readonly sizePt: number; readonly padPt: number },
  isNumber: readonly boolean[] = [],
): readonly number[] {
  doc.font('bold').fontSize(type.sizePt * scale);
  const [heads = []] = lines;
  const measure = (text: string): number => doc.widthOfString(text) + 2 * type.padPt + 3;
  const columns = heads.map((head, index) => {
    const texts = lines.map((cells) => cells[index] ?? '');
    const inParts = (text: string, row: number): readonly string[] =>
      row > 0 && isNumber[index] === true ? [text] : text.split(BREAKS);
    const least = Math.max(...texts.flatMap(inParts).map(measure));
    const whole = Math.max(least, 0.6 * measure(head), ...texts.slice(1).map(measure));
    return [least, Math.max(least, Math.min(WIDEST_SHARE * width, whole)), whole];
  });
  const step = (at: number): readonly number[] => columns.map((column) => column[at] ?? 0);
  const steps = [step(0), step(1), step(2)];
  const above = steps.findIndex((widths) => total(widths) > width);
  if (above === 0) return scaled(step(0), width);
  if (above < 0) {
    const spare = Math.min(MOST_SPARE_PT, (width - total(step(2))) / columns.length);
    return step(2).map((wanted) => wanted + spare);
  }
  const [from, to] = [step(above - 1), step(above)];
  const share = (width - total(from)) / (total(to) - total(from));
  return from.map((least, index) => least + share * ((to[index] ?? least) - least));
}

/** The sum of some widths. */
export function total(widths: readonly number[]): number {
  return widths.reduce((sum, width) => sum + width, 0);
}

function scaled(widths: readonly number[], to: number): readonly number[] {
  return widths.map((width) => (width * to) / total(widths));
}
