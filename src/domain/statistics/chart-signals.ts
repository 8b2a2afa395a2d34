import type { ControlChart } from './control-chart.js';

/** What may be said of a chart over time: these rules and no other. */
export const CHART_RULES = ['outside', 'shift', 'trend', 'two-of-three'] as const;
export type ChartRule = (typeof CHART_RULES)[number];

/** Points in a run on one side of the centre, and in a run that only rises or only falls. */
export const RUN_LENGTH = 7;

/** Each rule in words, as it is printed under a chart. */
export const CHART_RULE_WORDS: Readonly<Record<ChartRule, string>> = {
  outside: 'a point outside its limits',
  shift: `${RUN_LENGTH} points in a row on one side of the centre; a point on the centre breaks the row`,
  trend: `${RUN_LENGTH} points in a row that only rise or only fall; equal neighbours break the row`,
  'two-of-three': 'two of three points in a row beyond two thirds of the way to the same limit',
};

/** A rule in words without what breaks it, for a sentence. @example inShort('shift') -> '7 points in a row on one side of the centre' */
export function inShort(rule: ChartRule): string {
  const words = CHART_RULE_WORDS[rule];
  return words.split(';')[0] ?? words;
}

/** A rule that a chart meets. */
export interface ChartSignal {
  readonly rule: ChartRule;
  /** Index of the point that completes the rule. */
  readonly at: number;
  /** Indexes of every point that it rests on, in order. */
  readonly points: readonly number[];
  readonly direction: 'up' | 'down';
}

/**
 * The signals of a chart. A signal says "look here"; whether it is good or bad is for the direction of the measure to say.
 *
 * A period without a value breaks every row. A longer row is one signal.
 *
 * @returns in the order of the rules, then of time; a run chart can have shifts and trends only
 * @source Lengths of 7: teaching pages of the NHS improvement service on charts over time. Two of three: Western Electric
 *   rules (from memory). Other published sets use 8 and 6.
 */
export function chartSignals({ points, centre }: ControlChart): readonly ChartSignal[] {
  const values = points.map(({ value }) => value);
  const sigmas = points.map((point) => point.sigmas);
  const sides = values.map((value) => (value === null || centre === null ? 0 : Math.sign(value - centre)));
  const steps = values.map((value, index) => {
    const before = index === 0 ? null : (values[index - 1] ?? null);
    return value === null || before === null ? 0 : Math.sign(value - before);
  });
  return [
    ...outside(points),
    ...rows(sides, RUN_LENGTH).map((row) => signalOf('shift', row, RUN_LENGTH)),
    // Seven points that rise make six steps; the row begins at the point before the first step.
    ...rows(steps, RUN_LENGTH - 1)
      .map(({ from, to, side }) => ({ from: from - 1, to, side }))
      .map((row) => signalOf('trend', row, RUN_LENGTH)),
    ...twoOfThree(sigmas),
  ];
}

function outside(points: ControlChart['points']): readonly ChartSignal[] {
  return points.flatMap(({ value, lower, upper }, index) => {
    if (value === null || lower === null || upper === null) return [];
    if (value >= lower && value <= upper) return [];
    const direction = value > upper ? ('up' as const) : ('down' as const);
    return [{ rule: 'outside' as const, at: index, points: [index], direction }];
  });
}

interface Row {
  readonly from: number;
  readonly to: number;
  readonly side: number;
}

/** Rows of at least so many neighbours with the same sign, 0 breaking them. */
function rows(signs: readonly number[], least: number): readonly Row[] {
  const found: Row[] = [];
  let from = 0;
  signs.forEach((sign, index) => {
    if (sign !== signs[from]) from = index;
    const isLast = signs[index + 1] !== sign;
    if (sign !== 0 && isLast && index - from + 1 >= least) found.push({ from, to: index, side: sign });
  });
  return found;
}

function signalOf(rule: ChartRule, { from, to, side }: Row, length: number): ChartSignal {
  return {
    rule,
    at: from + length - 1,
    points: Array.from({ length: to - from + 1 }, (_, offset) => from + offset),
    direction: side > 0 ? 'up' : 'down',
  };
}

/** Two that share a point are one signal, as a longer row is. */
function twoOfThree(sigmas: readonly (number | null)[]): readonly ChartSignal[] {
  const sideOf = (index: number): number => {
    const sigma = sigmas[index] ?? null;
    return sigma === null || Math.abs(sigma) <= 2 ? 0 : Math.sign(sigma);
  };
  const signals: ChartSignal[] = [];
  sigmas.forEach((_, index) => {
    const side = sideOf(index);
    const isRow = (sigmas[index - 1] ?? null) !== null;
    const partner = [index - 1, ...(isRow ? [index - 2] : [])].find((before) => sideOf(before) === side);
    if (side === 0 || partner === undefined) return;
    const last = signals.at(-1);
    if (last?.points.at(-1) === partner) {
      signals[signals.length - 1] = { ...last, points: [...last.points, index] };
    } else {
      const direction = side > 0 ? ('up' as const) : ('down' as const);
      signals.push({ rule: 'two-of-three', at: index, points: [partner, index], direction });
    }
  });
  return signals;
}
