import type { FigureRule } from '../../domain/indicators/indicator.js';
import { ruleOf } from '../../domain/indicators/indicator.js';
import { NOT_CLOSED } from '../../domain/indicators/breakdown-figures.js';
import { COMPLETED_OF_STARTED } from '../../domain/indicators/definitions/completed-of-started.js';
import { DISCHARGE_ASSESSMENT_DONE } from '../../domain/indicators/definitions/discharge-assessment-done.js';
import { STARTED_WITHIN_90_DAYS } from '../../domain/indicators/definitions/started-within-90-days.js';
import { THREE_DOMAINS_AT_BOTH_ENDS } from '../../domain/indicators/definitions/three-domains-at-both-ends.js';
import { UPTAKE } from '../../domain/indicators/definitions/uptake.js';
import { outcomeFigures } from '../../domain/indicators/outcome-figures.js';
import type { Proportion } from '../../domain/statistics/proportion.js';
import { summarise } from '../../domain/statistics/summary.js';
import { figuresById, meanChange } from './comparisons-section.js';
import { earlierQuarter } from './earlier-quarter.js';
import type { EarlierFacts } from './earlier-quarter.js';
import { measuredStarters } from './outcomes-section.js';
import type { MeanOfPeriod, SeenPeriod } from './over-time-models.js';
import type { Quarter, QuarterInput } from './quarter.js';

/** Shares that are charted over time, whatever is measured. */
export const SHARES_OVER_TIME: readonly FigureRule[] = [
  ruleOf(STARTED_WITHIN_90_DAYS),
  ruleOf(UPTAKE),
  ruleOf(COMPLETED_OF_STARTED),
  ruleOf(DISCHARGE_ASSESSMENT_DONE),
  ruleOf(THREE_DOMAINS_AT_BOTH_ENDS),
];

/** What a trend keeps of one quarter: counts, and nothing of anybody. */
export interface QuarterOfTrend extends SeenPeriod {
  readonly received: number;
  /** Days to the start of those who started. */
  readonly wait: { readonly n: number; readonly median: number | null };
  /** By figure id; of measures that somebody had. */
  readonly shares: ReadonlyMap<string, Proportion>;
  /** Mean like-for-like change by measure id. */
  readonly changes: ReadonlyMap<string, MeanOfPeriod>;
}

/** Counts one quarter of a trend; its facts are not needed any more. */
export function quarterOfTrend(
  input: Pick<QuarterInput, 'settings' | 'sites' | 'narrowing'>,
  earlier: EarlierFacts,
): QuarterOfTrend {
  const quarter = earlierQuarter(input, earlier);
  const measured = measuredStarters(quarter);
  const reached = measured.map(({ measure }) => outcomeFigures(measure).likeForLike.midReached);
  const shares = figuresById([...SHARES_OVER_TIME, ...reached, NOT_CLOSED.referral], quarter);
  const { n, median } = summarise(daysToStart(quarter));
  return {
    period: earlier.period,
    asAt: earlier.asAt,
    received: shares.get(NOT_CLOSED.referral.id)?.denominator ?? 0,
    wait: { n, median },
    shares: new Map([...shares].map(([id, { numerator, denominator }]) => [id, { numerator, denominator }])),
    changes: new Map(measured.map((starters) => [starters.measure.id, meanChange(starters)])),
  };
}

function daysToStart({ cohorts }: Quarter): readonly number[] {
  return cohorts.referral.courses.flatMap(({ isRegisteredInError, waits }) => {
    const wait = isRegisteredInError ? null : waits.receipt.start;
    return wait?.kind === 'reached' ? [wait.days] : [];
  });
}
