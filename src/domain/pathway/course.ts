import type { PlainDate } from '../calendar/plain-date.js';
import type { ReferralFacts } from '../cohort/referral-facts.js';
import type { Timepoint } from '../referral/closed-sets.js';
import { factsAsAt } from './as-at.js';
import { completionStates } from './completion.js';
import type { CompletionStates } from './completion.js';
import type { Attendance } from './programme.js';
import { attendanceOf, startOf } from './programme.js';
import { waitsOf } from './waits.js';
import type { Waits } from './waits.js';

/** One referral as it stood at a data cut, with the dates that every rule of counting asks for. */
export interface CourseDates {
  /** Nothing in it is dated after the cut. */
  readonly facts: ReferralFacts;
  readonly asAt: PlainDate;
  readonly isRegisteredInError: boolean;
  /** First baseline assessment with a result; null where there is none. */
  readonly assessedOn: PlainDate | null;
  /** First supervised session attended; null where there is none. */
  readonly startedOn: PlainDate | null;
  /** First discharge assessment with a result; null where there is none. */
  readonly dischargeAssessedOn: PlainDate | null;
  readonly attendance: Attendance;
}

/** A course with what many rules ask of it, derived once because a report asks a hundred times. */
export interface Course extends CourseDates {
  /** By reading; null for a person who has not started. */
  readonly completion: CompletionStates | null;
  readonly waits: Waits;
}

/**
 * Derives the course of a referral from its facts.
 *
 * @param asAt the data cut: facts of that day are seen, later ones are not
 * @returns null where the referral was received after the cut
 */
export function courseOf(facts: ReferralFacts, asAt: PlainDate): Course | null {
  const known = factsAsAt(facts, asAt);
  if (known === null) return null;
  const dates: CourseDates = {
    facts: known,
    asAt,
    isRegisteredInError: known.closure?.reason === 'registered-in-error',
    assessedOn: firstAssessedOn(known, 'baseline'),
    startedOn: startOf(known),
    dischargeAssessedOn: firstAssessedOn(known, 'discharge'),
    attendance: attendanceOf(known),
  };
  return { ...dates, completion: completionStates(dates), waits: waitsOf(dates) };
}

/** The courses of many referrals at one cut, in their order; those received after it are left out. */
export function coursesOf(facts: readonly ReferralFacts[], asAt: PlainDate): readonly Course[] {
  return facts.flatMap((each) => courseOf(each, asAt) ?? []);
}

/**
 * The first day on which a person was assessed at a timepoint. A visit at which nothing was measured is no assessment,
 * so that a record of tests not done cannot count as a discharge assessment done.
 */
function firstAssessedOn(facts: ReferralFacts, timepoint: Timepoint): PlainDate | null {
  let first: PlainDate | null = null;
  for (const assessment of facts.assessments) {
    if (assessment.timepoint !== timepoint || assessment.results.length === 0) continue;
    if (first === null || assessment.assessedOn < first) first = assessment.assessedOn;
  }
  return first;
}
