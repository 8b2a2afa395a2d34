import { classIndexOf, endsOfClass } from '../../domain/change/change-classes.js';
import type { BetterWhen } from '../../domain/change/change-classes.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import { PAIR_FIGURE_IDS } from '../../domain/indicators/pair-figures.js';
import type { Distribution } from './section-models.js';

const MOST_CLASSES = 16;
/** So many are taken rather than lose the end that lies on the threshold. */
const MOST_CLASSES_AT_MID = 24;
const NICE = [1, 2, 5];
/** A threshold that cannot be written in so many decimal places makes no ends of classes. */
const MOST_PLACES = 3;

/** Which way a measure runs, and the change that matters in its unit, without a sign; null where there is none. */
export interface DistributionOf {
  readonly measureId: string;
  readonly betterWhen: BetterWhen;
  readonly mid: number | null;
}

/**
 * Sorts changes into classes of equal width whose ends are multiples of the width, so that no change is an end of a class, and
 * the threshold too wherever the changes do not spread too far for it.
 *
 * A class holds the end that is the lesser improvement: who changed by just the threshold stands with those who reached it.
 *
 * @param changes exact, in the unit of the measure
 * @returns null where there are none. The width is the threshold, or half of it where that needs at most 16 classes; where
 *   there is no threshold, or it would need more than 24, it is 1, 2 or 5 times a power of ten
 * @example distributionOf([-2, -1, 3], lower is better by 2) -> classes of 1: above -3 up to -2 has one pair, ...
 */
export function distributionOf(changes: readonly Fraction[], of: DistributionOf): Distribution | null {
  const [first] = changes;
  if (first === undefined) return null;
  const classWidth = widthFor(changes, of);
  const indexes = changes.map((change) => classIndexOf(change, classWidth, of.betterWhen));
  const [lowest, highest] = endsOf(indexes);
  const counts = new Array<number>(highest - lowest + 1).fill(0);
  for (const index of indexes) counts[index - lowest] = (counts[index - lowest] ?? 0) + 1;
  return {
    classWidth,
    holdsEnd: of.betterWhen === 'higher' ? 'lower' : 'upper',
    classes: counts.map((pairs, index) => ({
      figureId: PAIR_FIGURE_IDS.changeClass(of.measureId, classWidth, lowest + index),
      ...endsOfClass(lowest + index, classWidth),
      pairs,
    })),
  };
}

function widthFor(changes: readonly Fraction[], of: DistributionOf): number {
  const classesOf = (width: number): number => {
    const [lowest, highest] = endsOf(changes.map((change) => classIndexOf(change, width, of.betterWhen)));
    return highest - lowest + 1;
  };
  const atMid = of.mid === null ? [] : widthsOf(of.mid);
  const narrowest = atMid.find((width) => classesOf(width) <= MOST_CLASSES);
  const widest = atMid.at(-1);
  if (narrowest !== undefined) return narrowest;
  if (widest !== undefined && classesOf(widest) <= MOST_CLASSES_AT_MID) return widest;
  for (let power = -3; ; power += 1) {
    for (const nice of NICE) {
      const width = power < 0 ? nice / 10 ** -power : nice * 10 ** power;
      if (classesOf(width) <= MOST_CLASSES) return width;
    }
  }
}

function endsOf(indexes: readonly number[]): readonly [number, number] {
  return [
    indexes.reduce((least, index) => Math.min(least, index)),
    indexes.reduce((most, index) => Math.max(most, index)),
  ];
}

/** Half a threshold where that is as short to write, and the whole. @example widthsOf(30) -> [15, 30]; widthsOf(47.5) -> [47.5] */
function widthsOf(mid: number): readonly number[] {
  const places = Math.min(placesOf(mid), MOST_PLACES);
  return [mid / 2, mid].filter((width) => placesOf(width) <= places);
}

function placesOf(value: number): number {
  return (String(value).split('.')[1] ?? '').length;
}
