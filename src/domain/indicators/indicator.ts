import type { Period } from '../calendar/period.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { CourseChange } from '../change/course-changes.js';
import type { CohortKind, CountedOver } from '../cohort/cohorts.js';
import type { ExclusionId } from '../cohort/exclusions.js';
import type { Citation } from '../evidence/citation.js';
import type { Course } from '../pathway/course.js';
import type { TeamSettings } from '../settings/team-settings.js';

/**
 * What a rule says of one referral, with the reason in words.
 *
 * - `numerator`, `not-numerator`: counted, and the thing asked for is so, or is not
 * - `excluded`: left out of the denominator, by one of the printed exclusions
 * - `open`: not decided by the data cut, neither success nor failure
 */
export type Judgement =
  | { readonly kind: 'numerator' | 'not-numerator' | 'open'; readonly reason: string }
  | { readonly kind: 'excluded'; readonly exclusion: ExclusionId; readonly reason: string };

/** What a rule may look at beside the referral itself. */
export interface JudgeContext {
  readonly period: Period;
  /** The data cut; facts dated later are not seen. */
  readonly asAt: PlainDate;
  readonly settings: TeamSettings;
  /** What was measured at both ends, by measure id, judged by the team's thresholds; worked out once per referral. */
  readonly changesOf: (course: Course) => ReadonlyMap<string, CourseChange>;
}

/** A rule that makes a figure: every referral of its cohort is judged, and the judgements are counted. */
export interface FigureRule {
  /** Id of the figure, in an address: lower case letters, digits, hyphens and dots. */
  readonly id: string;
  /** Id of the rule with its version, printed beside the figure. */
  readonly ruleId: string;
  readonly title: string;
  readonly cohort: CountedOver;
  /** Who is in the numerator, in words. */
  readonly numerator: string;
  readonly denominator: string;
  /** Who is left out, in words; null where nobody but those registered in error. */
  readonly exclusions: string | null;
  readonly source: Citation;
  /** Judges a referral of the cohort; those registered in error never reach it. */
  readonly judge: (course: Course, context: JudgeContext) => Judgement;
}

/** A figure that stands in the table of indicators and may have a target. */
export interface Indicator extends Omit<FigureRule, 'ruleId'> {
  readonly cohort: CohortKind;
  /** Raised whenever the rule changes; a released figure keeps the version it was counted by. */
  readonly version: number;
  /** Key under which a team's settings hold the target. */
  readonly targetKey: string;
}

/** The rule of an indicator with its printed id. @example ruleOf(UPTAKE).ruleId -> 'uptake@1' */
export function ruleOf(indicator: Indicator): FigureRule {
  return { ...indicator, ruleId: `${indicator.id}@${indicator.version}` };
}
