import type { PlainDate } from '../calendar/plain-date.js';
import type { CountedOver } from '../cohort/cohorts.js';
import type { ExclusionId } from '../cohort/exclusions.js';
import type { Interval } from '../statistics/interval.js';

/**
 * One counted proportion with everything that must stand beside it. Percentages are 0 to 100, unrounded.
 *
 * numerator + not numerator = denominator; denominator + open + excluded = the referrals of the cohort.
 */
export interface Figure {
  readonly id: string;
  readonly ruleId: string;
  readonly title: string;
  readonly cohort: CountedOver;
  readonly numerator: number;
  /** Referrals decided by the data cut, those still open left out. */
  readonly denominator: number;
  readonly excluded: readonly Exclusion[];
  /** Not decided by the data cut; above 0 the figure is provisional. */
  readonly open: number;
  /** People behind the referrals: a person referred twice counts once. */
  readonly people: { readonly numerator: number; readonly denominator: number };
  /** Null where the denominator is 0. */
  readonly percentage: number | null;
  /** 95 % Wilson interval in percent; null where the denominator is 0. */
  readonly interval: Interval | null;
  /** The percentage if no open case, and if every open case, came to count; null where nothing is open. */
  readonly bounds: { readonly worst: number; readonly best: number } | null;
}

/** How many a rule left out for one reason. */
export interface Exclusion {
  readonly id: ExclusionId;
  readonly reason: string;
  readonly count: number;
}

/** How a referral may count, in the order in which the members of a figure are shown. */
export const MEMBER_KINDS = ['numerator', 'not-numerator', 'open', 'excluded'] as const;
export type MemberKind = (typeof MEMBER_KINDS)[number];

/** Which of those behind a figure are shown: who counts so, or all of the denominator. */
export const MEMBER_FILTERS = [...MEMBER_KINDS, 'counted'] as const;
export type MemberFilter = (typeof MEMBER_FILTERS)[number];

/** Whether a member is among those asked for. @example isShown('counted', 'not-numerator') -> true */
export function isShown(filter: MemberFilter, kind: MemberKind): boolean {
  return filter === 'counted' ? kind === 'numerator' || kind === 'not-numerator' : kind === filter;
}

/** One referral behind a figure. */
export interface FigureMember {
  readonly referralId: string;
  readonly patientId: string;
  readonly receivedOn: PlainDate;
  readonly kind: MemberKind;
  /** Why it is left out; null for those who are not. */
  readonly exclusion: ExclusionId | null;
  /** In words. */
  readonly reason: string;
}

/** A figure with everybody behind it. */
export interface CountedFigure {
  readonly figure: Figure;
  readonly members: readonly FigureMember[];
}
