import { COHORT_KINDS } from '../../domain/cohort/cohorts.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { ruleOf } from '../../domain/indicators/indicator.js';
import { INDICATORS } from '../../domain/indicators/registered.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
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
 * @example indicatorRow(17 of 20, target 85 %) -> reached (equality counts), not beyond chance
 */
function indicatorRow(figure: Figure, target: TeamSettings['targets'][string] | undefined): IndicatorRow {
  if (target === undefined) return { figure, target: null, isReached: null, isBeyondChance: null };
  const { numerator, denominator, interval } = figure;
  if (interval === null) return { figure, target, isReached: null, isBeyondChance: null };
  return {
    figure,
    target,
    isReached: 100 * numerator >= target.percent * denominator,
    isBeyondChance: target.percent < interval.low || target.percent > interval.high,
  };
}
