import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { Figure } from '../../domain/indicators/figure.js';
import type { ChartRule } from '../../domain/statistics/chart-signals.js';
import type { ControlChart } from '../../domain/statistics/control-chart.js';
import type { Interval } from '../../domain/statistics/interval.js';
import type { DifferenceInPoints } from './section-models.js';

/*
 * Sections of the quarterly report that look at several periods; a report has them where they were asked for. Every period
 * is seen as long after its end as the report's own, and counted by the team's settings of today.
 */

/** A period as it is seen: its figures open by these two. */
export interface SeenPeriod {
  readonly period: Period;
  readonly asAt: PlainDate;
}

/** The report's period beside an earlier one. */
export interface PeriodComparison extends SeenPeriod {
  readonly than: 'former-period' | 'a-year-earlier';
  readonly words: string;
  readonly shares: readonly ShareComparison[];
  readonly means: readonly MeanComparison[];
}

/** What may be said of a difference: nothing where either side has fewer than 30. */
export type Claim = 'beyond-chance' | 'within-chance' | 'too-few';

/** One figure now and then. */
export interface ShareComparison {
  readonly figureId: string;
  readonly title: string;
  readonly now: Figure;
  readonly then: Figure;
  /** Now less then, with the interval of Newcombe; null where either has nobody. */
  readonly difference: DifferenceInPoints | null;
  readonly claim: Claim;
}

/** Mean like-for-like change of one measure now and then, in its unit. */
export interface MeanComparison {
  readonly measureId: string;
  readonly shortName: string;
  readonly unit: string;
  readonly betterWhen: 'higher' | 'lower';
  /** The figure that opens to the pairs. */
  readonly figureId: string;
  readonly now: MeanOfPeriod;
  readonly then: MeanOfPeriod;
  /** Now less then, with the interval of Welch; null below two pairs on either side. */
  readonly difference: { readonly value: number; readonly interval: Interval } | null;
  readonly claim: Claim;
}

export interface MeanOfPeriod {
  readonly n: number;
  readonly mean: number | null;
  readonly sd: number | null;
}

/** Twelve quarters up to the report's own. */
export interface TrendSection {
  /** The earliest first. */
  readonly quarters: readonly SeenPeriod[];
  /** The rules by which a chart may be said to show something, and no other. */
  readonly rules: readonly { readonly rule: ChartRule; readonly words: string }[];
  readonly charts: readonly TrendChart[];
}

/** One figure over the quarters; percentages 0 to 100 in a p chart, the unit of the value otherwise. */
export interface TrendChart {
  readonly id: string;
  readonly title: string;
  /** `percent`, `referrals`, `days`, or the unit of a measure. */
  readonly unit: string;
  /** The figure that opens to the people of each quarter. */
  readonly figureId: string;
  readonly ruleId: string;
  readonly kind: ControlChart['kind'];
  readonly centre: number | null;
  /** Where the lower limit was cut off, as no value can lie below; null where it was not. */
  readonly lowerLimitCutAt: number | null;
  /** One a quarter, in their order. */
  readonly points: readonly TrendPoint[];
  readonly signals: readonly TrendSignal[];
}

export interface TrendPoint {
  readonly quarter: string;
  /** Referrals behind the value. */
  readonly n: number;
  readonly numerator: number | null;
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** A rule that a chart meets, resting on 30 referrals or more. */
export interface TrendSignal {
  readonly rule: ChartRule;
  readonly direction: 'up' | 'down';
  /** Labels of the quarters that it rests on, in order. */
  readonly quarters: readonly string[];
  readonly words: string;
}
