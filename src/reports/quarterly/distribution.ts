import type { Distribution } from './section-models.js';

const MOST_CLASSES = 16;
const NICE = [1, 2, 5];

/**
 * Sorts changes into classes of equal width whose ends are multiples of the width, so that no change and 0 begin a class.
 *
 * @param values changes in the unit of the measure
 * @returns null where there are none; the width is 1, 2 or 5 times a power of ten, the least that needs at most 16 classes
 * @example distributionOf([-20, 10, 30, 40]) -> width 5: -20 to -15 has one pair, ... 40 to 45 has one
 */
export function distributionOf(values: readonly number[]): Distribution | null {
  const [first] = values;
  if (first === undefined) return null;
  const lowest = values.reduce((least, value) => Math.min(least, value), first);
  const highest = values.reduce((most, value) => Math.max(most, value), first);
  const classWidth = widthFor(lowest, highest);
  const from = Math.floor(lowest / classWidth);
  const counts = new Array<number>(Math.floor(highest / classWidth) - from + 1).fill(0);
  for (const value of values) {
    const index = Math.floor(value / classWidth) - from;
    counts[index] = (counts[index] ?? 0) + 1;
  }
  return {
    classWidth,
    classes: counts.map((pairs, index) => ({
      from: multipleOf(classWidth, from + index),
      to: multipleOf(classWidth, from + index + 1),
      pairs,
    })),
  };
}

function widthFor(lowest: number, highest: number): number {
  for (let power = -3; ; power += 1) {
    for (const nice of NICE) {
      const width = power < 0 ? nice / 10 ** -power : nice * 10 ** power;
      if (Math.floor(highest / width) - Math.floor(lowest / width) < MOST_CLASSES) return width;
    }
  }
}

/** Without the trace that 3 times 0.1 leaves. */
function multipleOf(width: number, times: number): number {
  return Number((width * times).toPrecision(12));
}
