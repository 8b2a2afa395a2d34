import { countGroups } from '../../domain/indicators/count-groups.js';
import type { DimensionFigures } from '../../domain/indicators/count-groups.js';
import { ASSESSED_OF_REFERRED } from '../../domain/indicators/definitions/assessed-of-referred.js';
import { COMPLETED_OF_STARTED } from '../../domain/indicators/definitions/completed-of-started.js';
import { DISCHARGE_ASSESSMENT_DONE } from '../../domain/indicators/definitions/discharge-assessment-done.js';
import { STARTED_WITHIN_90_DAYS } from '../../domain/indicators/definitions/started-within-90-days.js';
import { UPTAKE } from '../../domain/indicators/definitions/uptake.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { FUNNEL_FIGURES } from '../../domain/indicators/funnel-figures.js';
import { ruleOf } from '../../domain/indicators/indicator.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import { OUTCOME_DOMAINS } from '../../domain/indicators/outcome-domains.js';
import { outcomeFigures } from '../../domain/indicators/outcome-figures.js';
import type { Measure } from '../../domain/measures/measure.js';
import { newcombeDifference } from '../../domain/statistics/proportion.js';
import type { FigureCounter } from './figure-counter.js';
import type { MeasuredStarters } from './outcomes-section.js';
import type { Quarter } from './quarter.js';
import type { Breakdown, BreakdownRow, DifferenceInPoints } from './section-models.js';

/** What is broken down, one figure for each step of the pathway; everybody counts in the first. */
const STEPS: readonly FigureRule[] = [
  ...FUNNEL_FIGURES.filter(({ step }) => step === 'referred').map(({ reached }) => reached),
  ruleOf(ASSESSED_OF_REFERRED),
  ruleOf(UPTAKE),
  ruleOf(STARTED_WITHIN_90_DAYS),
  ruleOf(COMPLETED_OF_STARTED),
  ruleOf(DISCHARGE_ASSESSMENT_DONE),
];

/** A figure with its groups, counted in one pass. */
export interface CountedBreakdown {
  readonly whole: Figure;
  readonly dimensions: readonly DimensionFigures[];
}

/** Counts every figure that is broken down. */
export function countedBreakdowns(
  { cohorts, context, dimensions }: Quarter,
  measured: readonly MeasuredStarters[],
  { count }: FigureCounter,
): readonly CountedBreakdown[] {
  return [...STEPS, ...headlineMeasures(measured).map(midReached)].map((rule) => ({
    whole: count(rule),
    dimensions: countGroups(rule, dimensions, cohorts[rule.cohort], context),
  }));
}

/** Each figure by each dimension, with the difference of every group to everybody else. */
export function breakdownSection(counted: readonly CountedBreakdown[]): readonly Breakdown[] {
  return counted.map(({ whole, dimensions }) => ({
    figureId: whole.id,
    title: whole.title,
    whole,
    dimensions: dimensions.map(({ dimension, groups }) => ({
      dimension: dimension.id,
      title: dimension.title,
      rows: groups.map(({ group, figure }): BreakdownRow => ({
        group: group.id,
        words: group.words,
        figure,
        differenceToRest: differenceToRest(figure, whole),
      })),
    })),
  }));
}

/**
 * For each of the three things that must be measured, the measure with most pairs: which that is changes with what the team
 * measures, and is said by the title of its figures.
 */
export function headlineMeasures(measured: readonly MeasuredStarters[]): readonly Measure[] {
  return OUTCOME_DOMAINS.flatMap(({ measureIds }) => {
    const judged = measured.filter(
      ({ measure, pairs }) =>
        measureIds.includes(measure.id) &&
        pairs.some(({ comparison }) => comparison.isLikeForLike && comparison.class !== 'change-only'),
    );
    const pairsOf = ({ pairs }: MeasuredStarters): number =>
      pairs.filter(({ comparison }) => comparison.isLikeForLike).length;
    const [most] = [...judged].sort((a, b) => pairsOf(b) - pairsOf(a));
    return most === undefined ? [] : [most.measure];
  });
}

function midReached(measure: Measure): FigureRule {
  return outcomeFigures(measure).likeForLike.midReached;
}

function differenceToRest(figure: Figure, whole: Figure): DifferenceInPoints | null {
  const rest = {
    numerator: whole.numerator - figure.numerator,
    denominator: whole.denominator - figure.denominator,
  };
  // Where everybody counts by definition there is nothing to compare.
  if (whole.numerator === whole.denominator) return null;
  return differenceInPoints(figure, rest);
}

/** The difference of two percentages of different people; null where either has nobody. */
export function differenceInPoints(
  a: Pick<Figure, 'numerator' | 'denominator'>,
  b: Pick<Figure, 'numerator' | 'denominator'>,
): DifferenceInPoints | null {
  const found = newcombeDifference(
    { numerator: a.numerator, denominator: a.denominator },
    { numerator: b.numerator, denominator: b.denominator },
  );
  if (found === null) return null;
  return { points: 100 * found.difference, interval: { low: 100 * found.low, high: 100 * found.high } };
}
