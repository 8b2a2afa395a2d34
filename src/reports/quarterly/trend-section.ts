import { NOT_CLOSED } from '../../domain/indicators/breakdown-figures.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import { outcomeFigures } from '../../domain/indicators/outcome-figures.js';
import { WAIT_FIGURES } from '../../domain/indicators/wait-figures.js';
import type { Measure } from '../../domain/measures/measure.js';
import {
  CHART_RULE_WORDS,
  CHART_RULES,
  chartSignals,
  inShort,
} from '../../domain/statistics/chart-signals.js';
import { pChart, xmrChart } from '../../domain/statistics/control-chart.js';
import type { Proportion } from '../../domain/statistics/proportion.js';
import type { ControlChart } from '../../domain/statistics/control-chart.js';
import { headlineMeasures } from './breakdown-section.js';
import { LEAST_TO_CLAIM } from './earlier-quarter.js';
import type { MeasuredStarters } from './outcomes-section.js';
import { SHARES_OVER_TIME } from './quarter-of-trend.js';
import type { QuarterOfTrend } from './quarter-of-trend.js';
import type { TrendChart, TrendPoint, TrendSection, TrendSignal } from './over-time-models.js';

/** Quarters of a trend: as many as limits need. */
export const TREND_QUARTERS = 12;

/**
 * Headline figures over twelve quarters: shares as p charts, numbers, days and mean changes as XmR charts. Limits are worked
 * out from all quarters shown; a chart with fewer values is a run chart about its median.
 *
 * @param measured of the report's own quarter: the measures whose change is charted are its headline measures
 * @param quarters as `quarterOfTrend` counts them, the earliest first, the report's own last
 */
export function trendSection(
  measured: readonly MeasuredStarters[],
  quarters: readonly QuarterOfTrend[],
): TrendSection {
  const measures = headlineMeasures(measured);
  const reached = measures.map((measure) => outcomeFigures(measure).likeForLike.midReached);
  return {
    quarters: quarters.map(({ period, asAt }) => ({ period, asAt })),
    rules: CHART_RULES.map((rule) => ({ rule, words: CHART_RULE_WORDS[rule] })),
    charts: [
      receivedChart(quarters),
      ...[...SHARES_OVER_TIME, ...reached].map((rule) => shareChart(rule, quarters)),
      ...waitChart(quarters),
      ...measures.map((measure) => changeChart(measure, quarters)),
    ],
  };
}

function shareChart(rule: FigureRule, quarters: readonly QuarterOfTrend[]): TrendChart {
  const counts = quarters.map(({ shares }) => shares.get(rule.id) ?? NOBODY);
  const values = counts.map(({ numerator, denominator }) => ({ n: denominator, numerator }));
  const what = { id: `trend.${rule.id}`, title: rule.title, unit: 'percent', rule };
  return chartOf(what, inPercent(pChart(counts)), values, quarters);
}

const NOBODY: Proportion = { numerator: 0, denominator: 0 };

function receivedChart(quarters: readonly QuarterOfTrend[]): TrendChart {
  const first = quarters.findIndex(({ received }) => received > 0);
  // Before the first referral there was no record, which is not a quarter of no referrals.
  const counts = quarters.map(({ received }, index) => (first < 0 || index < first ? null : received));
  const what = {
    id: 'trend.received',
    title: 'Referrals received',
    unit: 'referrals',
    rule: NOT_CLOSED.referral,
  };
  const values = quarters.map(({ received }) => ({ n: received, numerator: null }));
  return chartOf(what, xmrChart(counts, 0), values, quarters);
}

/** Of those who started only: people still waiting and people who left are not in it. */
function waitChart(quarters: readonly QuarterOfTrend[]): readonly TrendChart[] {
  return WAIT_FIGURES.filter(({ to, from }) => to === 'start' && from === 'receipt').map(({ standings }) => {
    const title = 'Median wait from receipt to start, of those who started';
    const what = { id: 'trend.days-to-start', title, unit: 'days', rule: standings.reached };
    const values = quarters.map(({ wait }) => ({ n: wait.n, numerator: null }));
    return chartOf(
      what,
      xmrChart(
        quarters.map(({ wait }) => wait.median),
        0,
      ),
      values,
      quarters,
    );
  });
}

function changeChart(measure: Measure, quarters: readonly QuarterOfTrend[]): TrendChart {
  const means = quarters.map(({ changes }) => changes.get(measure.id) ?? { n: 0, mean: null });
  const title = `${measure.shortName}: mean change, like for like`;
  const rule = outcomeFigures(measure).likeForLikePairs;
  const values = means.map(({ n }) => ({ n, numerator: null }));
  const what = { id: `trend.change.${measure.id}`, title, unit: measure.unit, rule };
  return chartOf(what, xmrChart(means.map(({ mean }) => mean)), values, quarters);
}

function chartOf(
  what: Pick<TrendChart, 'id' | 'title' | 'unit'> & { readonly rule: FigureRule },
  chart: ControlChart,
  values: readonly Pick<TrendPoint, 'n' | 'numerator'>[],
  quarters: readonly QuarterOfTrend[],
): TrendChart {
  const { id, title, unit, rule } = what;
  const points = chart.points.map(({ value, lower, upper }, index): TrendPoint => {
    const { n, numerator } = values[index] ?? { n: 0, numerator: null };
    return { quarter: quarters[index]?.period.label ?? '', n, numerator, value, lower, upper };
  });
  return {
    id,
    title,
    unit,
    figureId: rule.id,
    ruleId: rule.ruleId,
    kind: chart.kind,
    centre: chart.centre,
    lowerLimitCutAt: chart.lowerLimitCutAt,
    points,
    signals: signalsOf(chart, points),
  };
}

function signalsOf(chart: ControlChart, points: readonly TrendPoint[]): readonly TrendSignal[] {
  return chartSignals(chart).flatMap(({ rule, direction, points: indexes }): readonly TrendSignal[] => {
    const rests = points.filter((_, index) => indexes.includes(index));
    const referrals = rests.reduce((sum, { n }) => sum + n, 0);
    if (referrals < LEAST_TO_CLAIM) return [];
    return [{ rule, direction, quarters: rests.map(({ quarter }) => quarter), words: inShort(rule) }];
  });
}

function inPercent(chart: ControlChart): ControlChart {
  const percent = (share: number | null): number | null => (share === null ? null : 100 * share);
  return {
    ...chart,
    centre: percent(chart.centre),
    points: chart.points.map(({ value, lower, upper, sigmas }) => ({
      value: percent(value),
      lower: percent(lower),
      upper: percent(upper),
      sigmas,
    })),
  };
}
