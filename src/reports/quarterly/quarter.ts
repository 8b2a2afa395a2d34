import type { Period } from '../../domain/calendar/period.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { asCohort, cohortOf } from '../../domain/cohort/cohorts.js';
import type { Cohort, CountedOver } from '../../domain/cohort/cohorts.js';
import { dimensionsOf } from '../../domain/cohort/dimensions.js';
import type { Dimension, NamedSite } from '../../domain/cohort/dimensions.js';
import { waitingAmong } from '../../domain/cohort/waiting-list.js';
import type { WaitingReferral } from '../../domain/cohort/waiting-list.js';
import { narrowed } from '../../domain/cohort/narrowing.js';
import type { Narrowing } from '../../domain/cohort/narrowing.js';
import type { ReferralFacts } from '../../domain/cohort/referral-facts.js';
import type { JudgeContext } from '../../domain/indicators/indicator.js';
import { judgeContext } from '../../domain/indicators/judge-context.js';
import { coursesOf } from '../../domain/pathway/course.js';
import type { Course } from '../../domain/pathway/course.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';

/** Of what period a report is, at what cut, and by which settings it is counted. */
export interface QuarterTerms {
  readonly period: Period;
  /** The data cut. */
  readonly asAt: PlainDate;
  readonly settings: TeamSettings;
  /** Every site of the team, by name. */
  readonly sites: readonly NamedSite[];
}

/** What a report is counted from. */
export interface QuarterInput extends QuarterTerms {
  /**
   * Every referral that may belong to a cohort of the period, and every one that may wait at the cut; others do no harm.
   */
  readonly facts: readonly ReferralFacts[];
  /** What the report is narrowed to. */
  readonly narrowing: Narrowing;
}

/** The cohorts of a period at a cut, and everybody who waits then, ready to be counted. */
export interface Quarter {
  readonly cohorts: Readonly<Record<CountedOver, Cohort>>;
  readonly context: JudgeContext;
  /** Everybody who waits for a start at the data cut, whenever they were received. */
  readonly waiting: readonly WaitingReferral[];
  /** By what figures are broken down. */
  readonly dimensions: readonly Dimension[];
}

/** Narrows the facts, cuts them at the as-at date, once, and sorts them into the cohorts. */
export function quarterFrom({ facts, narrowing, ...terms }: QuarterInput): Quarter {
  return quarterOf(coursesOf(narrowed(facts, narrowing), terms.asAt), terms);
}

/** Sorts courses, all at the cut of the terms, into the cohorts. */
export function quarterOf(
  courses: readonly Course[],
  { period, asAt, settings, sites }: QuarterTerms,
): Quarter {
  const waiting = waitingAmong(courses);
  return {
    cohorts: {
      referral: cohortOf('referral', courses, period),
      start: cohortOf('start', courses, period),
      discharge: cohortOf('discharge', courses, period),
      waiting: asCohort(
        'waiting',
        waiting.map(({ course }) => course),
      ),
    },
    context: judgeContext({ period, asAt, settings }),
    waiting,
    dimensions: dimensionsOf(sites),
  };
}
