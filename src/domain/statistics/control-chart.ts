import type { Proportion } from './proportion.js';
import { summarise } from './summary.js';

/** Fewer points than this have no limits: a run chart about their median instead. */
const LEAST_POINTS_FOR_LIMITS = 12;

/** One point of a chart over time; null where the period has no value. */
export interface ChartPoint {
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Distance from the centre in thirds of the distance to the limit; null without value, limits or spread. */
  readonly sigmas: number | null;
}

/** A chart over time with limits within which points vary by chance. */
export interface ControlChart {
  /** `run`: fewer points than limits need, the centre is the median. */
  readonly kind: 'xmr' | 'p' | 'run';
  readonly centre: number | null;
  readonly points: readonly ChartPoint[];
  /** Where the lower limit of an XmR chart was cut off, as no value can lie below; null where it was not. */
  readonly lowerLimitCutAt: number | null;
  /** Mean moving range and its upper limit; null but in an XmR chart. */
  readonly movingRange: { readonly mean: number; readonly upper: number } | null;
}

/** Three standard deviations by the mean moving range: 3 / 1.128, as tables round it. */
const XMR_FACTOR = 2.66;
const MOVING_RANGE_FACTOR = 3.267;

/**
 * XmR chart of a measure over time: mean, and limits from how far neighbours differ.
 *
 * @param values one a period in the order of time; null where there is none, and then no range to its neighbours
 * @param least below which no value can lie, such as 0 for counts and days: the lower limit is cut off there; null where any may
 * @returns a run chart about the median where fewer than twelve periods have a value
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (limits with 3 / 1.128, of which 2.66 is the rounding).
 * @example xmrChart([49.6, 47.6, 49.9, ...]).centre -> 50.81
 */
export function xmrChart(values: readonly (number | null)[], least: number | null = null): ControlChart {
  const known = values.filter((value) => value !== null);
  const { mean, median } = summarise(known);
  if (known.length < LEAST_POINTS_FOR_LIMITS || mean === null) return runChart(values, median);
  const ranges = movingRanges(values);
  if (ranges.length === 0) return runChart(values, median);
  const meanRange = ranges.reduce((sum, range) => sum + range, 0) / ranges.length;
  const reach = XMR_FACTOR * meanRange;
  const isCut = least !== null && mean - reach < least;
  return {
    kind: 'xmr',
    centre: mean,
    lowerLimitCutAt: isCut ? least : null,
    points: values.map((value) => ({
      value,
      lower: isCut ? least : mean - reach,
      upper: mean + reach,
      sigmas: value === null || reach === 0 ? null : (3 * (value - mean)) / reach,
    })),
    movingRange: { mean: meanRange, upper: MOVING_RANGE_FACTOR * meanRange },
  };
}

/**
 * p chart of a proportion over time: the pooled proportion, and limits at three standard deviations for each denominator.
 *
 * @param counts one a period in the order of time; a denominator of 0 is a period without a value
 * @returns proportions 0 to 1, limits cut at 0 and 1; a run chart where fewer than twelve periods have a value
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2.
 * @example pChart([{ numerator: 12, denominator: 50 }, ...]).centre -> 0.2313
 */
export function pChart(counts: readonly Proportion[]): ControlChart {
  const values = counts.map(({ numerator, denominator }) =>
    denominator === 0 ? null : numerator / denominator,
  );
  const known = values.filter((value) => value !== null);
  if (known.length < LEAST_POINTS_FOR_LIMITS) return runChart(values, summarise(known).median);
  const sum = (part: (count: Proportion) => number): number =>
    counts.reduce((total, count) => total + part(count), 0);
  const centre = sum((count) => count.numerator) / sum((count) => count.denominator);
  return {
    kind: 'p',
    centre,
    points: counts.map(({ denominator }, index) => {
      const value = values[index] ?? null;
      if (value === null) return { value, lower: null, upper: null, sigmas: null };
      const sigma = Math.sqrt((centre * (1 - centre)) / denominator);
      return {
        value,
        lower: Math.max(0, centre - 3 * sigma),
        upper: Math.min(1, centre + 3 * sigma),
        sigmas: sigma === 0 ? null : (value - centre) / sigma,
      };
    }),
    lowerLimitCutAt: null,
    movingRange: null,
  };
}

function runChart(values: readonly (number | null)[], median: number | null): ControlChart {
  const points = values.map((value) => ({ value, lower: null, upper: null, sigmas: null }));
  return { kind: 'run', centre: median, points, lowerLimitCutAt: null, movingRange: null };
}

/** How far each value is from the one before it. */
function movingRanges(values: readonly (number | null)[]): readonly number[] {
  return values.flatMap((value, index) => {
    const before = values[index - 1] ?? null;
    return value === null || before === null ? [] : [Math.abs(value - before)];
  });
}
