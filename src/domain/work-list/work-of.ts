import { britishDate } from '../calendar/british-date.js';
import { daysBetween } from '../calendar/plain-date.js';
import type { Course } from '../pathway/course.js';
import { agreedDay, latestOffer } from './offers.js';
import { programmeEndOf } from './programme-end.js';
import { assessmentDue } from './rules/assessment-due.js';
import { bookingDue } from './rules/booking-due.js';
import { closureDue } from './rules/closure-due.js';
import { dischargeAssessmentDue } from './rules/discharge-assessment-due.js';
import { duplicatePending } from './rules/duplicate-pending.js';
import { pairAtRisk } from './rules/pair-at-risk.js';
import { plannedStartOf, startDue } from './rules/start-due.js';
import { triageDue } from './rules/triage-due.js';
import { waitNearTarget } from './rules/wait-near-target.js';
import type { Due, ReferralWorkGroupId, WorkInput, WorkRule } from './work-list.js';

const RULES: readonly (readonly [ReferralWorkGroupId, WorkRule])[] = [
  ['triage', triageDue],
  ['booking', bookingDue],
  ['assessments', assessmentDue],
  ['starts', startDue],
  ['discharge-assessments', dischargeAssessmentDue],
  ['pairs-at-risk', pairAtRisk],
  ['waits', waitNearTarget],
  ['closure', closureDue],
  ['duplicates', duplicatePending],
];

/** What is due for one referral in one group. */
export interface ReferralDue extends Due {
  readonly group: ReferralWorkGroupId;
  /** Days since the due day; 0 today, negative for days still left. */
  readonly daysLate: number;
}

/** Everything that is due for a referral, or why nothing is. */
export type Work =
  | { readonly kind: 'due'; readonly dues: readonly ReferralDue[] }
  | { readonly kind: 'quiet'; readonly reason: string };

/**
 * What is due for an open referral, at most once in each group.
 *
 * @returns `quiet` with the reason where nothing is due; a closed referral is always quiet
 * @example workOf(received and triaged yesterday, nothing offered) -> due in `booking`
 */
export function workOf(input: WorkInput): Work {
  if (input.stage === 'closed') return { kind: 'quiet', reason: 'Closed' };
  const dues = RULES.flatMap(([group, rule]) => {
    const due = rule(input);
    return due === null ? [] : [{ group, ...due, daysLate: daysBetween(due.dueOn, input.course.asAt) }];
  });
  return dues.length > 0 ? { kind: 'due', dues } : { kind: 'quiet', reason: quietReason(input.course) };
}

/** Why nothing is due: something is agreed for later, or the programme is under way. */
function quietReason(course: Course): string {
  if (course.startedOn !== null) {
    const { attended, expected } = course.attendance;
    const { plannedEndOn } = programmeEndOf(course, course.startedOn);
    return `In the programme: ${attended} of ${expected} sessions attended, ends ${britishDate(plannedEndOn)}`;
  }
  const plannedFor = course.assessedOn === null ? null : plannedStartOf(course.facts);
  if (plannedFor !== null) return `Start planned for ${britishDate(plannedFor)}`;
  const bookedFor = agreedDay(latestOffer(course.facts, 'assessment'));
  return bookedFor === null ? 'Nothing is due' : `Assessment booked for ${britishDate(bookedFor)}`;
}
