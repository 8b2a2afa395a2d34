import { COMPLETED_OF_STARTED } from '../../domain/indicators/definitions/completed-of-started.js';
import { DISCHARGE_ASSESSMENT_DONE } from '../../domain/indicators/definitions/discharge-assessment-done.js';
import { STARTED_WITHIN_90_DAYS } from '../../domain/indicators/definitions/started-within-90-days.js';
import { THREE_DOMAINS_AT_BOTH_ENDS } from '../../domain/indicators/definitions/three-domains-at-both-ends.js';
import { UPTAKE } from '../../domain/indicators/definitions/uptake.js';
import { NOT_CLOSED } from '../../domain/indicators/breakdown-figures.js';
import { ruleOf } from '../../domain/indicators/indicator.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import { outcomeFigures } from '../../domain/indicators/outcome-figures.js';
import { WAIT_FIGURES } from '../../domain/indicators/wait-figures.js';
import type { Measure } from '../../domain/measures/measure.js';
import { CHART_RULE_WORDS, CHART_RULES, chartSignals } from '../../domain/statistics/chart-signals.js';
import { pChart, xmrChart } from '../../domain/statistics/control-chart.js';
import type { ControlChart } from '../../domain/statistics/control-chart.js';
import { summarise } from '../../domain/statistics/summary.js';
import { headlineMeasures } from './breakdown-section.js';
import { figuresById, meanChange } from './comparisons-section.js';
import { earlierQuarter, LEAST_TO_CLAIM } from './earlier-quarter.js';
import type { EarlierFacts } from './earlier-quarter.js';
import { measuredStarters } from './outcomes-section.js';
import type { MeasuredStarters } from './outcomes-section.js';
import type { TrendChart, TrendPoint, TrendSection, TrendSignal } from './over-time-models.js';
import type { Quarter, QuarterInput } from './quarter.js';

/** Quarters of a trend: as many as limits need. */
export const TREND_QUARTERS = 12;

const SHARES: readonly FigureRule[] = [
  ruleOf(STARTED_WITHIN_90_DAYS),
  ruleOf(UPTAKE),
  ruleOf(COMPLETED_OF_STARTED),
  ruleOf(DISCHARGE_ASSESSMENT_DONE),
  ruleOf(THREE_DOMAINS_AT_BOTH_ENDS),
];

/** One quarter of a trend, and what was measured in it. */
interface TrendQuarter {
  readonly label: string;
  readonly quarter: Quarter;
  readonly measured: readonly MeasuredStarters[];
}

/**
 * Headline figures over twelve quarters: shares as p charts, numbers, days and mean changes as XmR charts. Limits are worked
 * out from all quarters shown; a chart with fewer values is a run chart about its median.
 *
 * @param measured of the report's own quarter: the measures whose change is charted are its headline measures
 * @param quarters the earliest first, the report's own last
 */
export function trendSection(
  input: Pick<QuarterInput, 'settings' | 'sites' | 'narrowing'>,
  measured: readonly MeasuredStarters[],
  quarters: readonly EarlierFacts[],
): TrendSection {
  const seen = quarters.map((earlier): TrendQuarter => {
    const quarter = earlierQuarter(input, earlier);
    return { label: earlier.period.label, quarter, measured: measuredStarters(quarter) };
  });
  const measures = headlineMeasures(measured);
  return {
    quarters: quarters.map(({ period, asAt }) => ({ period, asAt })),
    rules: CHART_RULES.map((rule) => ({ rule, words: CHART_RULE_WORDS[rule] })),
    charts: [
      ...receivedChart(seen),
      ...shareCharts(
        [...SHARES, ...measures.map((measure) => outcomeFigures(measure).likeForLike.midReached)],
        seen,
      ),
      ...waitChart(seen),
      ...measures.map((measure) => changeChart(measure, seen)),
    ],
  };
}

function shareCharts(rules: readonly FigureRule[], seen: readonly TrendQuarter[]): readonly TrendChart[] {
  const figures = seen.map(({ quarter }) => figuresById(rules, quarter));
  return rules.map((rule) => {
    const counts = figures.map((byId) => byId.get(rule.id) ?? { numerator: 0, denominator: 0 });
    const chart = inPercent(pChart(counts.map(({ numerator, denominator }) => ({ numerator, denominator }))));
    const values = counts.map(({ numerator, denominator }) => ({ n: denominator, numerator }));
    return chartOf({ id: `trend.${rule.id}`, title: rule.title, unit: 'percent', rule }, chart, values, seen);
  });
}

function receivedChart(seen: readonly TrendQuarter[]): readonly TrendChart[] {
  const rule = NOT_CLOSED.referral;
  const counts = seen.map(({ quarter }) => figuresById([rule], quarter).get(rule.id)?.denominator ?? 0);
  const what = { id: 'trend.received', title: 'Referrals received', unit: 'referrals', rule };
  const values = counts.map((n) => ({ n, numerator: null }));
  return [chartOf(what, xmrChart(counts), values, seen)];
}

/** Of those who started only: people still waiting and people who left are not in it. */
function waitChart(seen: readonly TrendQuarter[]): readonly TrendChart[] {
  return WAIT_FIGURES.filter(({ to, from }) => to === 'start' && from === 'receipt').map(({ standings }) => {
    const days = seen.map(({ quarter }) => summarise(daysToStart(quarter)));
    const chart = xmrChart(days.map(({ median }) => median));
    const title = 'Median wait from receipt to start, of those who started';
    const what = { id: 'trend.days-to-start', title, unit: 'days', rule: standings.reached };
    const values = days.map(({ n }) => ({ n, numerator: null }));
    return chartOf(what, chart, values, seen);
  });
}

function daysToStart({ cohorts }: Quarter): readonly number[] {
  return cohorts.referral.courses.flatMap(({ isRegisteredInError, waits }) => {
    const wait = isRegisteredInError ? null : waits.receipt.start;
    return wait?.kind === 'reached' ? [wait.days] : [];
  });
}

function changeChart(measure: Measure, seen: readonly TrendQuarter[]): TrendChart {
  const means = seen.map(({ measured }) => meanChange(measured.find((found) => found.measure === measure)));
  const chart = xmrChart(means.map(({ mean }) => mean));
  const title = `${measure.shortName}: mean change, like for like`;
  const rule = outcomeFigures(measure).likeForLikePairs;
  const values = means.map(({ n }) => ({ n, numerator: null }));
  return chartOf({ id: `trend.change.${measure.id}`, title, unit: measure.unit, rule }, chart, values, seen);
}

function chartOf(
  what: Pick<TrendChart, 'id' | 'title' | 'unit'> & { readonly rule: FigureRule },
  chart: ControlChart,
  values: readonly Pick<TrendPoint, 'n' | 'numerator'>[],
  seen: readonly TrendQuarter[],
): TrendChart {
  const { id, title, unit, rule } = what;
  const points = chart.points.map(({ value, lower, upper }, index): TrendPoint => {
    const { n, numerator } = values[index] ?? { n: 0, numerator: null };
    return { quarter: seen[index]?.label ?? '', n, numerator, value, lower, upper };
  });
  return {
    id,
    title,
    unit,
    figureId: rule.id,
    ruleId: rule.ruleId,
    kind: chart.kind,
    centre: chart.centre,
    points,
    signals: signalsOf(chart, points),
  };
}

function signalsOf(chart: ControlChart, points: readonly TrendPoint[]): readonly TrendSignal[] {
  return chartSignals(chart).flatMap(({ rule, direction, points: indexes }): readonly TrendSignal[] => {
    const rests = points.filter((_, index) => indexes.includes(index));
    const referrals = rests.reduce((sum, { n }) => sum + n, 0);
    if (referrals < LEAST_TO_CLAIM) return [];
    return [
      { rule, direction, quarters: rests.map(({ quarter }) => quarter), words: CHART_RULE_WORDS[rule] },
    ];
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
