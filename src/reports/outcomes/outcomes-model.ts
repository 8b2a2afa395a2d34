import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { ChangeClass } from '../../domain/change/change.js';
import type { Citation } from '../../domain/evidence/citation.js';
import type { Stage } from '../../domain/pathway/stage.js';

/** How one person changed, measure by measure. Numbers are in the unit of the measure. */
export interface Outcomes {
  readonly referralId: string;
  readonly stage: Stage;
  readonly asAt: PlainDate;
  /** Version of the team's settings by which changes were judged. */
  readonly settingsVersion: number;
  readonly measures: readonly MeasureOutcome[];
  readonly sessions: SessionsSummary;
  readonly cautions: readonly Caution[];
}

/** Sessions of one person; what was supervised, what was not, and what is only reported are never added up. */
export interface SessionsSummary {
  readonly supervisedAttended: number;
  /** Planned less cancelled by the service: what attendance is measured against. */
  readonly supervisedExpected: number;
  readonly unsupervisedAttended: number;
  /** From the exercise diary: sessions that the person reports. */
  readonly diaryWeeks: number;
  readonly diarySessionsReported: number;
}

export interface MeasureOutcome {
  readonly measureId: string;
  readonly name: string;
  readonly unit: string;
  readonly betterWhen: 'higher' | 'lower';
  readonly baseline: EndResult | null;
  readonly discharge: EndResult | null;
  /** Discharge minus baseline; null where there is no pair. */
  readonly change: number | null;
  /** The change with its sign turned where lower is better: positive is always better. */
  readonly improvement: number | null;
  readonly class: ChangeClass | null;
  readonly isLikeForLike: boolean | null;
  /** What keeps the pair from being like for like, in words. */
  readonly differences: readonly string[];
  /** Why there is no pair, in words; null where there is one. */
  readonly noPairReason: string | null;
  readonly improvementThreshold: ThresholdUsed | null;
  /** Null where getting worse is judged by the improvement threshold turned round. */
  readonly worseningThreshold: ThresholdUsed | null;
}

/** What was measured at one end. */
export interface EndResult {
  readonly assessmentId: string;
  readonly assessedOn: PlainDate;
  readonly value: number;
  /** Null where the test asks for one attempt only. */
  readonly hadPracticeWalk: boolean | null;
  readonly isCeiling: boolean;
  readonly conditions: Readonly<Record<string, string | null>>;
  readonly predicted: PredictedShare | null;
}

/** A result as a share of what is predicted for healthy people; never compared across equations. */
export interface PredictedShare {
  readonly equationId: string;
  readonly predicted: number | null;
  readonly percentPredicted: number | null;
  readonly lowerLimit: number | null;
  readonly isBelowLowerLimit: boolean | null;
  readonly beyondAgesStudied: boolean;
  /** Why there is no prediction, in words; null where there is one. */
  readonly notPredictedReason: string | null;
}

export interface ThresholdUsed {
  readonly thresholdId: string;
  readonly value: number;
  readonly amountsTo: string;
  readonly chosenBy: string;
  readonly population: string;
  readonly populationNote: string | null;
  readonly source: Citation;
  readonly mark: string | null;
}

/** Something a reader must know before using a figure. */
export interface Caution {
  /** Stable id, such as `beyond-ages-studied`. */
  readonly id: string;
  /** The measure it belongs to; null where it is about the whole. */
  readonly measureId: string | null;
  readonly text: string;
  /** The assessment that raised it; null where the comparison of two did. */
  readonly assessmentId: string | null;
  /** Null where it follows from the figures themselves. */
  readonly source: Citation | null;
  readonly mustBeAcknowledged: boolean;
  readonly isAcknowledged: boolean;
}
