import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { CohortKind } from '../../domain/cohort/cohorts.js';
import type { CompletionDenominator } from '../../domain/indicators/completed.js';
import type { Figure } from '../../domain/indicators/figure.js';
import type { WaitFrom, WaitTo } from '../../domain/pathway/waits.js';
import type { CompletionReading } from '../../domain/settings/team-settings.js';
import type { PairedChange } from '../../domain/statistics/paired-change.js';
import type { Summary } from '../../domain/statistics/summary.js';
import type { DefinitionsUsed, Source, ThresholdUse } from './definitions-model.js';
import type { NarrowedTo } from './narrowed-to.js';
import type { PeriodComparison, TrendSection } from './over-time-models.js';
import type {
  BenchmarkMeanRow,
  BenchmarkRow,
  Breakdown,
  DataQuality,
  Distribution,
  FunnelStepRow,
  NarrativeSentence,
  SiteComparison,
  WaitingSection,
} from './section-models.js';

/**
 * The quarterly report: one plain model that every renderer reads.
 *
 * Numbers are unrounded, so that all forms show the same figure; each renderer rounds once, when it writes. What cannot
 * be worked out is null, never 0 or NaN. Percentages are 0 to 100.
 */
export interface QuarterlyReport {
  readonly teamName: string;
  readonly period: Period;
  /** Data cut: nothing dated later is counted. */
  readonly asAt: PlainDate;
  readonly settingsVersion: number;
  /** What the report was narrowed to; empty where to nothing. */
  readonly narrowedTo: readonly NarrowedTo[];
  /** Three to six sentences made by rules, each with the figures it rests on. */
  readonly narrative: readonly NarrativeSentence[];
  readonly provisional: Provisional;
  readonly definitions: DefinitionsUsed;
  readonly cohorts: Readonly<Record<CohortKind, CohortSummary>>;
  readonly referrals: ReferralsSection;
  readonly uptake: { readonly assessed: Figure; readonly started: Figure };
  readonly funnel: readonly FunnelStepRow[];
  readonly waiting: WaitingSection;
  readonly waits: readonly WaitSummary[];
  readonly completion: readonly CompletionRow[];
  readonly outcomes: readonly MeasureOutcomes[];
  readonly percentPredicted: readonly PercentPredicted[];
  readonly indicators: readonly IndicatorRow[];
  readonly reasons: { readonly notStarting: readonly Figure[]; readonly notCompleting: readonly Figure[] };
  readonly breakdowns: readonly Breakdown[];
  readonly sites: readonly SiteComparison[];
  readonly benchmarks: readonly BenchmarkRow[];
  readonly benchmarkMeans: readonly BenchmarkMeanRow[];
  readonly dataQuality: DataQuality;
  /** Beside the former period and the same a year earlier; null where it was not asked for. */
  readonly comparisons: readonly PeriodComparison[] | null;
  /** Over twelve quarters; null likewise. */
  readonly trend: TrendSection | null;
}

/** Whether figures may still move. */
export interface Provisional {
  readonly isProvisional: boolean;
  /** False where the cut is before the last day of the period. */
  readonly isPeriodOver: boolean;
  /** In words, such as `start cohort: 3 of 21 still open`; empty where nothing is open. */
  readonly notes: readonly string[];
}

/** One of the three cohorts. Outcomes come from the discharge cohort, completion of starters from the start cohort. */
export interface CohortSummary {
  readonly kind: CohortKind;
  readonly words: string;
  readonly referrals: number;
  readonly people: number;
  readonly registeredInError: number;
  /** Nobody has closed them by the data cut. */
  readonly notClosed: Figure;
}

/** Referrals received. Rows without a referral are left out. */
export interface ReferralsSection {
  readonly received: number;
  readonly people: number;
  readonly bySource: readonly Figure[];
  readonly byPathway: readonly Figure[];
  readonly byDiagnosis: readonly Figure[];
}

/**
 * A simple wait. The summary is over those who reached the event only: it is biased low while people wait, so the
 * number still waiting stands beside it.
 */
export interface WaitSummary {
  readonly to: WaitTo;
  readonly from: WaitFrom;
  readonly title: string;
  readonly label: string;
  /** Days of those who reached the event. */
  readonly daysOfThoseWhoReachedIt: Summary;
  readonly reached: Figure;
  readonly stillWaiting: Figure;
  readonly longestStillWaitingDays: number | null;
  readonly left: Figure;
  /** Started without a baseline assessment; null for the wait to the start. */
  readonly passedOver: Figure | null;
}

/** Completion by one reading over the three denominators. */
export interface CompletionRow {
  readonly reading: CompletionReading;
  readonly ruleId: string;
  readonly title: string;
  /** The reading the team has chosen. */
  readonly isHeadline: boolean;
  readonly cells: readonly CompletionCellFigures[];
}

export interface CompletionCellFigures {
  readonly of: CompletionDenominator;
  readonly all: Figure;
  readonly withoutDeathsAndMoves: Figure;
}

/** Outcomes of one measure in the discharge cohort. */
export interface MeasureOutcomes {
  readonly measureId: string;
  readonly name: string;
  readonly shortName: string;
  readonly unit: string;
  readonly betterWhen: 'higher' | 'lower';
  /** Pairs over starters: everybody discharged who had started. */
  readonly pairsOverStarters: Figure;
  readonly likeForLikePairsOverStarters: Figure;
  /** The headline. */
  readonly likeForLike: PairsOutcome;
  readonly allPairs: PairsOutcome;
  /** Like-for-like pairs with both tests at the person's home; null where the test has no place, or none was. */
  readonly atHome: PairsSummary | null;
  /** Of like-for-like changes; null without a pair. */
  readonly distribution: Distribution | null;
  /** What kept pairs from being like for like; a pair counts under each. */
  readonly differences: readonly {
    readonly condition: string;
    readonly name: string;
    readonly figureId: string;
    readonly pairs: number;
  }[];
  readonly practiceWalk: { readonly baseline: Figure; readonly discharge: Figure } | null;
  /** Pairs of which one end had a practice walk and the other had not; null where the test asks for none. */
  readonly practiceWalkDiffers: number | null;
  /** Pairs with a result at the ceiling of the test at either end: their true change is not known. */
  readonly pairsAtCeiling: number;
  /** Null where the measure has no threshold. */
  readonly responders: Responders | null;
  readonly thresholds: readonly ThresholdUse[];
  /** The marks of all thresholds used, each once; empty where every source was read. */
  readonly marks: readonly string[];
}

/** Both ends and the change of a set of pairs, in the unit of the measure. */
export interface PairsSummary {
  readonly pairs: number;
  readonly baseline: Summary;
  readonly discharge: Summary;
  /** Discharge minus baseline. */
  readonly change: PairedChange;
  readonly changeSummary: Summary;
}

/** The same with how many changed by how much. */
export interface PairsOutcome extends PairsSummary {
  /** Null where the measure has no threshold. */
  readonly midReached: Figure | null;
  readonly littleChange: Figure | null;
  readonly worse: Figure | null;
}

/**
 * Share who reached the MID, with what the people not measured again could make of it, in percent. Eligible are the
 * starters discharged who had a baseline result of this measure; a pair not like for like counts as not measured.
 */
export interface Responders {
  readonly achieved: number;
  readonly measured: number;
  readonly eligible: number;
  readonly worst: number | null;
  readonly best: number | null;
  readonly measuredShare: number | null;
  /** Fewer than 70 % of the eligible were measured, which must be said beside the figure. */
  readonly fewMeasured: boolean;
}

/** Results in percent of predicted at both ends, of like-for-like pairs within the ages studied. */
export interface PercentPredicted {
  readonly measureId: string;
  readonly shortName: string;
  readonly equationId: string;
  readonly equationTitle: string;
  readonly source: Source;
  /** Like-for-like pairs: counted, beyond the ages studied and not predicted add up to it. */
  readonly pairs: number;
  readonly baseline: Summary;
  readonly discharge: Summary;
  /** Below the lower limit of normal; null where the equation gives none. */
  readonly belowLowerLimit: { readonly baseline: number; readonly discharge: number } | null;
  /** Pairs left out because an end lies beyond the ages studied. */
  readonly beyondAgesStudied: number;
  /** Pairs left out because an end has no prediction, by reason. */
  readonly notPredicted: readonly { readonly reason: string; readonly pairs: number }[];
}

/** An indicator against its target. */
export interface IndicatorRow {
  readonly figure: Figure;
  /** Null where the team has set none. */
  readonly target: { readonly percent: number; readonly source: string } | null;
  /** Whether the percentage is at least the target; null without a target or a percentage. */
  readonly isReached: boolean | null;
  /**
   * Whether the 95 % interval excludes the target however the open ones end, so that the difference is more than chance;
   * null likewise, of fewer than 30 that are decided, and where too many are open to say so.
   */
  readonly isBeyondChance: boolean | null;
}
