import { addDays } from '../calendar/plain-date.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { ReferralFacts } from '../cohort/referral-facts.js';
import type { Course } from './course.js';
import { courseOf } from './course.js';

/** Where a referral stands, in the order of the pathway. */
export const STAGES = [
  'awaiting-triage',
  'awaiting-assessment',
  'awaiting-start',
  'in-programme',
  'awaiting-discharge-assessment',
  'awaiting-closure',
  'closed',
] as const;
export type Stage = (typeof STAGES)[number];

/** Shown in the place of a stage for a referral that was entered in error: it stands nowhere on the pathway. */
export const IN_ERROR_STAGE = 'entered-in-error';
export type ShownStage = Stage | typeof IN_ERROR_STAGE;

/**
 * The stage of a referral, derived from its facts and never typed.
 *
 * The furthest fact decides, so that a missing earlier one (a triage that nobody wrote down) does not hold a person
 * back. `awaiting-closure` is for those whom the pathway has nothing more to offer, but whom nobody has closed: the
 * discharge assessment is done, or triage did not accept them.
 *
 * @param asAt the day on which the question is asked; later facts are not seen
 * @returns null where the referral had not been received by then
 * @example stageOf(received and triaged, nothing else) -> 'awaiting-assessment'
 */
export function stageOf(facts: ReferralFacts, asAt: PlainDate): Stage | null {
  const course = courseOf(facts, asAt);
  return course === null ? null : stageOfCourse(course);
}

/** The stage of a course at its own cut. */
export function stageOfCourse(course: Course): Stage {
  const { facts } = course;
  if (facts.closure !== null) return 'closed';
  if (course.dischargeAssessedOn !== null) return 'awaiting-closure';
  if (course.startedOn !== null) {
    return isProgrammeOver(course, course.startedOn) ? 'awaiting-discharge-assessment' : 'in-programme';
  }
  if (facts.triage !== null && facts.triage.decision !== 'accepted') return 'awaiting-closure';
  if (course.assessedOn !== null) return 'awaiting-start';
  return facts.triage === null ? 'awaiting-triage' : 'awaiting-assessment';
}

/** The planned weeks have passed, or as many supervised sessions have been held or missed as were planned. */
function isProgrammeOver(course: Course, startedOn: PlainDate): boolean {
  const { attended, didNotAttend, cancelledByPatient, expected } = course.attendance;
  if (attended + didNotAttend + cancelledByPatient >= expected) return true;
  return course.asAt >= addDays(startedOn, course.facts.plannedWeeks * 7);
}
