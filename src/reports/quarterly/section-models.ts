import type { PlainDate } from '../../domain/calendar/plain-date.js';
import type { EntriesInError } from '../../domain/history/entered-in-error.js';
import type { PairLossReason } from '../../domain/change/pair-loss.js';
import type { Figure } from '../../domain/indicators/figure.js';
import type { WaitEnding } from '../../domain/pathway/competing.js';
import type { FunnelStep } from '../../domain/pathway/funnel.js';
import type { Stage } from '../../domain/pathway/stage.js';
import type { WaitFrom } from '../../domain/pathway/waits.js';
import type { Interval } from '../../domain/statistics/interval.js';
import type { PairedChange } from '../../domain/statistics/paired-change.js';
import type { Source } from './definitions-model.js';

/*
 * Sections of the quarterly report that stand on their own. As everywhere in it, numbers are unrounded, percentages are 0
 * to 100, and what cannot be worked out is null.
 */

/** From referral to completion: who reached each step, who left after it and why, who is still at it. */
export interface FunnelStepRow {
  readonly step: FunnelStep;
  readonly title: string;
  readonly reached: Figure;
  /** Of those who reached it; its open cases are still at it. Null for the last step. */
  readonly left: Figure | null;
  /** Reasons for which somebody left, each of those who reached the step. */
  readonly leftBecause: readonly Figure[];
}

/** Waiting for the start, those still waiting and those who left included. */
export interface WaitingSection {
  readonly clocks: readonly IncidenceByClock[];
  readonly now: WaitingNow;
}

/** Cumulative incidence of a start by one clock, over the referral cohort. */
export interface IncidenceByClock {
  readonly from: WaitFrom;
  readonly title: string;
  /** Id with version of the method. */
  readonly methodId: string;
  /** Referrals to which the clock applies. */
  readonly referrals: number;
  readonly days: readonly IncidenceRow[];
  /** The same between those days, to be drawn: a step holds until the next, and nothing is known beyond the last. */
  readonly curve: readonly IncidenceCurveStep[];
}

/** What had become of everybody by a day, in percent; the rest was waiting. */
export interface IncidenceCurveStep {
  readonly day: number;
  readonly startedPercent: number;
  readonly leftPercent: number;
}

export interface IncidenceRow {
  readonly day: number;
  /** Neither started nor left before the day, and seen up to it. */
  readonly atRisk: number;
  /** The same people, to be opened. */
  readonly seenSoLong: Figure;
  /** The counts behind it, which open. */
  readonly startedByDay: Figure;
  /** Null where nobody was seen so long. */
  readonly started: PercentWithInterval | null;
  /** Reasons to leave that compete with a start, by the day. */
  readonly leftBy: readonly {
    readonly ending: Exclude<WaitEnding, 'started'>;
    readonly words: string;
    readonly percent: number | null;
  }[];
  readonly stillWaitingPercent: number | null;
}

export interface PercentWithInterval {
  readonly percent: number;
  /** 95 %; null where the percentage is 0 or 100. */
  readonly interval: Interval | null;
}

/** Everybody of the team who waits for a start on the day of the cut, whenever they were received. */
export interface WaitingNow {
  readonly waiting: Figure;
  readonly byStage: readonly { readonly stage: Stage; readonly words: string; readonly waiting: Figure }[];
  /** Days waited from receipt. */
  readonly overDays: readonly { readonly days: number; readonly waiting: Figure }[];
  readonly longest: readonly LongWait[];
}

export interface LongWait {
  readonly referralId: string;
  readonly receivedOn: PlainDate;
  readonly days: number;
  readonly stage: Stage;
}

/** How changes spread: pairs by classes of equal width. */
export interface Distribution {
  readonly classWidth: number;
  /** The end that is in its class, the lesser improvement: a threshold begins the class of those who just reached it. */
  readonly holdsEnd: 'lower' | 'upper';
  readonly classes: readonly {
    /** Opens to the people of these pairs. */
    readonly figureId: string;
    readonly from: number;
    readonly to: number;
    readonly pairs: number;
  }[];
}

/** One figure in every group of every dimension, never ranked. */
export interface Breakdown {
  readonly figureId: string;
  readonly title: string;
  readonly whole: Figure;
  readonly dimensions: readonly {
    readonly dimension: string;
    readonly title: string;
    readonly rows: readonly BreakdownRow[];
  }[];
}

export interface BreakdownRow {
  readonly group: string;
  readonly words: string;
  readonly figure: Figure;
  /** The group less everybody else, in percentage points; null where either has nobody, or where all count by definition. */
  readonly differenceToRest: DifferenceInPoints | null;
}

/** A difference of two percentages with its 95 % interval by the method of Newcombe. */
export interface DifferenceInPoints {
  readonly points: number;
  readonly interval: Interval;
}

/** Sites side by side: within funnel limits from five sites on, with intervals only below. */
export interface SiteComparison {
  readonly figureId: string;
  readonly title: string;
  readonly kind: 'funnel' | 'intervals';
  /** All sites together, about which the funnel is drawn. */
  readonly whole: Figure;
  readonly sites: readonly {
    readonly siteId: string;
    readonly name: string;
    readonly figure: Figure;
    /** Null without a funnel or without anybody. */
    readonly limits: { readonly inner: Interval; readonly outer: Interval } | null;
    /** Null likewise; of fewer than 30 nothing is said. */
    readonly place: 'within' | 'beyond-inner' | 'beyond-outer' | 'too-few' | null;
  }[];
}

/** How far the record can be trusted, and what to mend first. */
export interface DataQuality {
  readonly completeness: readonly Figure[];
  readonly pairsLost: readonly PairsLost[];
  /** One for each breathlessness scale that was measured, with 0 where no grade was converted. */
  readonly gradesConverted: readonly ConvertedPairs[];
  readonly entry: readonly Figure[];
  readonly confirmedValues: Figure;
  /** Entries of the whole team, dated in the period, that are marked as entered in error and count nowhere. */
  readonly entriesInError: EntriesInError & { readonly words: string };
  /** What is missing for most referrals first. */
  readonly mendFirst: readonly {
    readonly figureId: string;
    /** Which of those whom the figure counts: it asks what is there, or what is missing. */
    readonly members: 'numerator' | 'not-numerator';
    readonly words: string;
    readonly referrals: number;
  }[];
}

/** What became of the starters of the discharge cohort for one measure; the parts add up to them. */
export interface PairsLost {
  readonly measureId: string;
  readonly shortName: string;
  /** The figure that opens to the same people. */
  readonly figureId: string;
  readonly starters: number;
  readonly pairs: number;
  readonly lost: readonly {
    readonly reason: PairLossReason;
    readonly words: string;
    /** Opens to them. */
    readonly figureId: string;
    readonly referrals: number;
  }[];
}

/** Pairs of a breathlessness scale that there are only because the grade at discharge was converted from the other scale. */
export interface ConvertedPairs {
  /** Of the scale of the baseline. */
  readonly measureId: string;
  readonly shortName: string;
  /** Opens to the people of these pairs. */
  readonly figureId: string;
  readonly pairs: number;
  /** All pairs of the scale, these among them; none of these is like for like. */
  readonly ofPairs: number;
}

/** A published figure beside the team's own: context, never a target. */
export interface BenchmarkRow {
  readonly id: string;
  readonly title: string;
  /** The team's own, which opens. */
  readonly own: Figure;
  readonly published: {
    readonly percent: number;
    readonly n: number | null;
    readonly population: string;
    readonly source: Source;
  };
  /** Why the two may differ by definition. */
  readonly caution: string;
}

/** A published mean change beside the team's own, like for like: context, never a target. */
export interface BenchmarkMeanRow {
  readonly id: string;
  readonly measureId: string;
  readonly shortName: string;
  /** Of the means, discharge minus baseline. */
  readonly unit: string;
  readonly betterWhen: 'higher' | 'lower';
  /** The figure that opens to the team's pairs. */
  readonly figureId: string;
  readonly own: PairedChange;
  readonly published: {
    readonly mean: number;
    readonly sd: number | null;
    readonly interval: Interval | null;
    readonly n: number;
    readonly population: string;
    readonly source: Source;
  };
  readonly caution: string;
}

/** One plain sentence of the narrative, with the figures that it rests on. */
export interface NarrativeSentence {
  readonly text: string;
  readonly figureIds: readonly string[];
}
