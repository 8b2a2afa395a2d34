import {
  aYearEarlier,
  formerPeriod,
  quartersUpTo,
  sameAgeCut,
} from '../../domain/calendar/earlier-periods.js';
import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import { countedEarlier } from '../../reports/quarterly/comparisons-section.js';
import type { EarlierToCompare } from '../../reports/quarterly/comparisons-section.js';
import type { EarlierFacts } from '../../reports/quarterly/earlier-quarter.js';
import { quarterOfTrend } from '../../reports/quarterly/quarter-of-trend.js';
import type { QuarterOfTrend } from '../../reports/quarterly/quarter-of-trend.js';
import type { QuarterInput } from '../../reports/quarterly/quarter.js';
import { TREND_QUARTERS } from '../../reports/quarterly/trend-section.js';
import type { Executor } from '../../storage/connection.js';
import { idsTouchedInPeriod } from '../../storage/facts/cohort-ids.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import { letOthersWork } from '../../storage/let-others-work.js';

/** Whose facts are read, and by which period the earlier ones go. */
export interface EarlierOf {
  readonly teamId: string;
  readonly period: Period;
  readonly asAt: PlainDate;
  readonly settings: TeamSettings;
}

/** How an earlier period is counted: as the report is. */
type CountedAs = EarlierOf & Pick<QuarterInput, 'sites' | 'narrowing'>;

/** The former period and the same a year earlier, each counted by itself so that others are answered in between. */
export async function periodsToCompare(db: Executor, of: CountedAs): Promise<readonly EarlierToCompare[]> {
  const former = formerPeriod(of.period);
  const yearEarlier = aYearEarlier(of.period);
  const [then, aYearAgo] = await factsOfPeriods(db, of, [
    former,
    ...(yearEarlier === null ? [] : [yearEarlier]),
  ]);
  const counted: EarlierToCompare[] = [];
  for (const [than, facts] of [
    ['former-period', then],
    ['a-year-earlier', aYearAgo],
  ] as const) {
    if (facts === undefined) continue;
    counted.push(countedEarlier(of, { than, ...facts }));
    await letOthersWork();
  }
  return counted;
}

/**
 * Twelve quarters up to the one in which the period ends, or to the one of the cut where that is earlier, each counted by
 * itself so that others are answered in between.
 */
export async function quartersOfTrend(db: Executor, of: CountedAs): Promise<readonly QuarterOfTrend[]> {
  const { period, asAt } = of;
  const lastDay = period.lastDay < asAt ? period.lastDay : asAt;
  const counted: QuarterOfTrend[] = [];
  for (const facts of await factsOfPeriods(db, of, quartersUpTo(lastDay, TREND_QUARTERS))) {
    counted.push(quarterOfTrend(of, facts));
    await letOthersWork();
  }
  return counted;
}

/** Each referral is read once, however many of the periods it touches. */
async function factsOfPeriods(
  db: Executor,
  { teamId, period, asAt, settings }: EarlierOf,
  periods: readonly Period[],
): Promise<readonly EarlierFacts[]> {
  const idsOf = new Map<string, readonly string[]>();
  for (const each of periods) idsOf.set(each.label, await idsTouchedInPeriod(db, teamId, each));
  const ids = [...new Set([...idsOf.values()].flat())].sort();
  const facts = await loadReferralFacts(db, teamId, ids, settings);
  const byId = new Map(facts.map((each) => [each.referralId, each]));
  return periods.map((each) => ({
    period: each,
    asAt: sameAgeCut(each, period, asAt),
    facts: (idsOf.get(each.label) ?? []).flatMap((id) => byId.get(id) ?? []),
  }));
}
