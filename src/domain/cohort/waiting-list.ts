import type { Course } from '../pathway/course.js';
import { stageOfCourse } from '../pathway/stage.js';

/** The stages of those who wait for a start, in the order of the pathway. */
export const WAITING_STAGES = ['awaiting-triage', 'awaiting-assessment', 'awaiting-start'] as const;
export type WaitingStage = (typeof WAITING_STAGES)[number];

/** A referral that waits for a start at its cut, whenever it was received. */
export interface WaitingReferral {
  readonly course: Course;
  readonly stage: WaitingStage;
}

/**
 * Those of some referrals who wait for a start at the data cut.
 *
 * @param courses all at one cut; nobody is found who is not among them
 */
export function waitingAmong(courses: readonly Course[]): readonly WaitingReferral[] {
  return courses.flatMap((course) => {
    if (course.startedOn !== null) return [];
    const stage = stageOfCourse(course);
    const waiting = WAITING_STAGES.find((each) => each === stage);
    return waiting === undefined ? [] : [{ course, stage: waiting }];
  });
}
