import { COHORT_KINDS } from '../../domain/cohort/cohorts.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { ruleOf } from '../../domain/indicators/indicator.js';
import { INDICATORS } from '../../domain/indicators/registered.js';
import { percentagesOf } from '../../domain/indicators/tally.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import { LEAST_TO_CLAIM } from './earlier-quarter.js';
import type { FigureCounter } from './figure-counter.js';
import type { IndicatorRow, MeasureOutcomes } from './report-model.js';

/** Every indicator against its target, cohort by cohort, then the share reaching the MID of each measure: like-for-like pairs. */
export function indicatorsSection(
  outcomes: readonly MeasureOutcomes[],
  settings: TeamSettings,
  { count }: FigureCounter,
): readonly IndicatorRow[] {
  return [
    ...COHORT_KINDS.flatMap((cohort) =>
      INDICATORS.filter((indicator) => indicator.cohort === cohort).map((indicator) =>
        indicatorRow(count(ruleOf(indicator)), settings.targets[indicator.targetKey]),
      ),
    ),
    ...outcomes.flatMap(({ likeForLike: { midReached } }) =>
      midReached === null ? [] : [indicatorRow(midReached, settings.targets[midReached.id])],
    ),
  ];
}

/**
 * A figure against its target.
 *
 * @param target in percent; undefined where the team has set none
 * @example indicatorRow(34 of 40, target 85 %) -> reached (equality counts), not beyond chance
 */
function indicatorRow(figure: Figure, target: TeamSettings['targets'][string] | undefined): IndicatorRow {
  if (target === undefined) return { figure, target: null, isReached: null, isBeyondChance: null };
  const { numerator, denominator } = figure;
  if (denominator === 0) return { figure, target, isReached: null, isBeyondChance: null };
  const isReached = 100 * numerator >= target.percent * denominator;
  return { figure, target, isReached, isBeyondChance: beyondChance(figure, target.percent, isReached) };
}

/**
 * Whether the distance to a target is more than chance. Those who are decided first are not like those decided last: who
 * declines is known at once, who completes is known late. So the interval must leave the target out however the open ones
 * end, and of fewer than 30 nothing is claimed.
 *
 * @returns null where they are too few to say anything, or where it would be more than chance, were the open ones not too many
 */
function beyondChance(figure: Figure, target: number, isReached: boolean): boolean | null {
  const { numerator, denominator, open } = figure;
  const leavesOut = ({ interval }: Pick<Figure, 'interval'>): boolean =>
    interval !== null && (isReached ? interval.low > target : interval.high < target);
  if (denominator < LEAST_TO_CLAIM) return null;
  if (!leavesOut(figure)) return false;
  const turned = percentagesOf(isReached ? numerator : numerator + open, denominator + open, 0);
  return leavesOut(turned) ? true : null;
}
