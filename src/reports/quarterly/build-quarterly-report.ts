import { COHORT_KINDS, COHORT_WORDS } from '../../domain/cohort/cohorts.js';
import type { Cohort, CohortKind } from '../../domain/cohort/cohorts.js';
import {
  BY_DIAGNOSIS,
  BY_PATHWAY,
  BY_SOURCE,
  NOT_CLOSED,
} from '../../domain/indicators/breakdown-figures.js';
import { COMPLETION_CELLS } from '../../domain/indicators/completion-figures.js';
import { ASSESSED_OF_REFERRED } from '../../domain/indicators/definitions/assessed-of-referred.js';
import { UPTAKE } from '../../domain/indicators/definitions/uptake.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { GENERAL_RULES } from '../../domain/indicators/figure-rules.js';
import { ruleOf } from '../../domain/indicators/indicator.js';
import type { FigureRule } from '../../domain/indicators/indicator.js';
import {
  REASONS_FOR_NOT_COMPLETING,
  REASONS_FOR_NOT_STARTING,
} from '../../domain/indicators/leaving-figures.js';
import { COMPLETION_RULES } from '../../domain/pathway/completion.js';
import { COMPLETION_READINGS } from '../../domain/settings/team-settings.js';
import type { CompletionReading } from '../../domain/settings/team-settings.js';
import { outcomeRules } from '../../domain/indicators/outcome-figures.js';
import type { EntriesInError } from '../../domain/history/entered-in-error.js';
import type { NamedSite } from '../../domain/cohort/dimensions.js';
import type { Narrowing } from '../../domain/cohort/narrowing.js';
import { benchmarkMeansOf, benchmarksSection } from './benchmarks-section.js';
import { breakdownSection, countedBreakdowns } from './breakdown-section.js';
import { changesTold } from './changes-told.js';
import { comparisonsSection } from './comparisons-section.js';
import type { EarlierToCompare } from './comparisons-section.js';
import { dataQualitySection } from './data-quality-section.js';
import { definitionsUsed } from './definitions.js';
import { figureCounter } from './figure-counter.js';
import type { FigureCounter } from './figure-counter.js';
import { funnelSection } from './funnel-section.js';
import { indicatorsSection } from './indicators-section.js';
import { narrativeOf } from './narrative.js';
import { narrowedTo } from './narrowed-to.js';
import { measuredStarters, outcomesSection } from './outcomes-section.js';
import { percentPredictedSection } from './percent-predicted-section.js';
import { quarterFrom } from './quarter.js';
import type { Quarter, QuarterInput, QuarterTerms } from './quarter.js';
import type { CohortSummary, CompletionRow, Provisional, QuarterlyReport } from './report-model.js';
import { sitesSection } from './sites-section.js';
import type { QuarterOfTrend } from './quarter-of-trend.js';
import { trendSection } from './trend-section.js';
import { waitingSection } from './waiting-section.js';
import { waitsSection } from './waits-section.js';

/** What the report is built from. */
export interface QuarterlyReportInput extends QuarterInput, ReportTerms {}

/** What a report is made by, beside those whom it counts. */
export interface ReportTerms extends QuarterTerms {
  /** What the report is narrowed to. */
  readonly narrowing: Narrowing;
  readonly settingsVersion: number;
  readonly teamName: string;
  readonly commissioners: readonly NamedSite[];
  /** Earlier periods to compare with; null or left out where that was not asked for. */
  readonly compareWith?: readonly EarlierToCompare[] | null;
  /** Quarters of a trend, the report's own last; null likewise. */
  readonly trendOver?: readonly QuarterOfTrend[] | null;
  /** Of the whole team, dated in the period: what was kept out. */
  readonly entriesInError: EntriesInError;
}

/**
 * Builds the quarterly report from plain facts.
 *
 * Referral cohort: referrals, uptake, waits, completion of those assessed and referred. Start cohort: completion of
 * those started, reasons for not completing. Discharge cohort: outcomes, plans; pairs over those of it who had started.
 *
 * @param input facts of the referrals that may belong to the period, the cut, and the team's settings with their version
 * @returns a report that is well formed whatever the facts: an empty quarter has counts of 0 and nulls, never NaN
 */
export function buildQuarterlyReport(input: QuarterlyReportInput): QuarterlyReport {
  return reportOf(quarterFrom(input), input);
}

/** The report of those who have been sorted into the cohorts already. */
export function reportOf(quarter: Quarter, terms: ReportTerms): QuarterlyReport {
  const { period, asAt, settings, settingsVersion, teamName, narrowing } = terms;
  const measured = measuredStarters(quarter);
  const counter = figureCounter(quarter, [
    ...GENERAL_RULES,
    ...measured.flatMap(({ measure }) => outcomeRules(measure)),
  ]);
  const cohorts = {
    referral: cohortSummary('referral', quarter.cohorts.referral, counter),
    start: cohortSummary('start', quarter.cohorts.start, counter),
    discharge: cohortSummary('discharge', quarter.cohorts.discharge, counter),
  };
  const referrals = {
    received: cohorts.referral.referrals,
    people: cohorts.referral.people,
    bySource: filledRows(BY_SOURCE, counter),
    byPathway: filledRows(BY_PATHWAY, counter),
    byDiagnosis: filledRows(BY_DIAGNOSIS, counter),
  };
  const uptake = {
    assessed: counter.count(ruleOf(ASSESSED_OF_REFERRED)),
    started: counter.count(ruleOf(UPTAKE)),
  };
  const waits = waitsSection(quarter, counter);
  const completion = completionRows(settings.completionReading, counter);
  const outcomes = outcomesSection(measured, counter);
  const percentPredicted = percentPredictedSection(measured, settings);
  const indicators = indicatorsSection(outcomes, settings, counter);
  const reasons = {
    notStarting: filledRows(REASONS_FOR_NOT_STARTING, counter),
    notCompleting: filledRows(REASONS_FOR_NOT_COMPLETING, counter),
  };
  const funnel = funnelSection(counter);
  const waiting = waitingSection(quarter, counter);
  const broken = countedBreakdowns(quarter, measured, counter);
  const benchmarks = benchmarksSection(outcomes, counter);
  const dataQuality = dataQualitySection(quarter, outcomes, counter, terms.entriesInError);
  const provisional = provisionalState(asAt >= period.lastDay, cohorts);
  const { compareWith = null, trendOver = null } = terms;
  const comparisons = compareWith === null ? null : comparisonsSection({ indicators, outcomes }, compareWith);
  const trend = trendOver === null ? null : trendSection(measured, trendOver);
  const told = { asAt, cohorts, uptake, indicators, outcomes, dataQuality, provisional };
  return {
    teamName,
    period,
    asAt,
    settingsVersion,
    narrowedTo: narrowedTo(narrowing, terms),
    narrative: narrativeOf(told, changesTold(comparisons, trend)),
    provisional,
    definitions: definitionsUsed(settings, outcomes, percentPredicted, counter),
    cohorts,
    referrals,
    uptake,
    funnel,
    waiting,
    waits,
    completion,
    outcomes,
    percentPredicted,
    indicators,
    reasons,
    breakdowns: breakdownSection(broken),
    sites: sitesSection(broken),
    benchmarks,
    benchmarkMeans: benchmarkMeansOf(outcomes),
    dataQuality,
    comparisons,
    trend,
  };
}

function cohortSummary(kind: CohortKind, cohort: Cohort, { count }: FigureCounter): CohortSummary {
  const notClosed = count(NOT_CLOSED[kind]);
  return {
    kind,
    words: COHORT_WORDS[kind],
    referrals: notClosed.denominator,
    people: notClosed.people.denominator,
    registeredInError: cohort.courses.length - notClosed.denominator,
    notClosed,
  };
}

/** Rows in which somebody counts. */
function filledRows(rules: readonly FigureRule[], { count }: FigureCounter): readonly Figure[] {
  return rules.map(count).filter((figure) => figure.numerator > 0);
}

function completionRows(headline: CompletionReading, { count }: FigureCounter): readonly CompletionRow[] {
  return COMPLETION_READINGS.map((reading) => ({
    reading,
    ruleId: COMPLETION_RULES[reading].ruleId,
    title: COMPLETION_RULES[reading].title,
    isHeadline: reading === headline,
    cells: COMPLETION_CELLS.filter((cell) => cell.reading === reading).map((cell) => ({
      of: cell.of,
      all: count(cell.all),
      withoutDeathsAndMoves: count(cell.withoutDeathsAndMoves),
    })),
  }));
}

/** A cohort in which nobody is left to close can still be moved by a correction, but by nothing that is yet to happen. */
function provisionalState(
  isPeriodOver: boolean,
  cohorts: Readonly<Record<CohortKind, CohortSummary>>,
): Provisional {
  const notes = COHORT_KINDS.flatMap((kind) => {
    const { notClosed, referrals } = cohorts[kind];
    return notClosed.numerator === 0
      ? []
      : [`${kind} cohort: ${notClosed.numerator} of ${referrals} still open`];
  });
  return { isProvisional: !isPeriodOver || notes.length > 0, isPeriodOver, notes };
}
