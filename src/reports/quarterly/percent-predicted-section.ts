import { equationFor, predictedPair } from '../../domain/indicators/predicted-figures.js';
import type { PredictionEquation } from '../../domain/prediction/prediction-equation.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import { summarise } from '../../domain/statistics/summary.js';
import type { MeasuredStarters } from './outcomes-section.js';
import type { PercentPredicted } from './report-model.js';
import { sourceOf } from './source.js';

/**
 * Results in percent of predicted at both ends, for each measure with an equation chosen by the team.
 *
 * Over like-for-like pairs only, so that both ends are of the same people; a pair with either end beyond the ages
 * studied is computed elsewhere but left out here, and counted.
 */
export function percentPredictedSection(
  measured: readonly MeasuredStarters[],
  settings: TeamSettings,
): readonly PercentPredicted[] {
  return measured.flatMap((starters) => {
    const equation = equationFor(starters.measure, settings);
    return equation === null ? [] : [percentPredicted(starters, equation)];
  });
}

function percentPredicted(
  { measure, pairs }: MeasuredStarters,
  equation: PredictionEquation,
): PercentPredicted {
  const [atBaseline, atDischarge]: [number[], number[]] = [[], []];
  const below = { baseline: 0, discharge: 0 };
  const notPredicted = new Map<string, number>();
  let [beyond, all] = [0, 0];
  for (const { course, baseline, discharge, comparison } of pairs) {
    if (!comparison.isLikeForLike) continue;
    all += 1;
    const predicted = predictedPair(equation, { course, baseline, discharge });
    if (predicted.kind === 'not-predicted') {
      notPredicted.set(predicted.reason, (notPredicted.get(predicted.reason) ?? 0) + 1);
      continue;
    }
    const { baseline: before, discharge: after } = predicted;
    if (predicted.kind === 'beyond-ages') {
      beyond += 1;
    } else if (before.percent !== null && after.percent !== null) {
      atBaseline.push(before.percent);
      atDischarge.push(after.percent);
      if (before.isBelowLowerLimit === true) below.baseline += 1;
      if (after.isBelowLowerLimit === true) below.discharge += 1;
    }
  }
  return {
    measureId: measure.id,
    shortName: measure.shortName,
    equationId: equation.id,
    equationTitle: equation.title,
    source: sourceOf(equation.citation),
    pairs: all,
    baseline: summarise(atBaseline),
    discharge: summarise(atDischarge),
    belowLowerLimit: equation.lowerLimitRule === null ? null : below,
    beyondAgesStudied: beyond,
    notPredicted: [...notPredicted].map(([reason, count]) => ({ reason, pairs: count })),
  };
}
