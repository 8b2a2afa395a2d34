import type { PlainDate } from '../calendar/plain-date.js';
import type { Course } from '../pathway/course.js';
import type { Judgement } from './indicator.js';
import { leftOut } from './judge.js';
import { judgeStartedBy } from './started-by.js';

/**
 * Whether a person referred after an exacerbation started by a day counted from the hospital discharge.
 *
 * @param deadlineAfter the last day that counts, from the day of discharge
 * @returns left out where the clock does not apply or its first day is not recorded
 */
export function judgeAfterHospital(
  course: Course,
  deadlineAfter: (dischargedOn: PlainDate) => PlainDate,
): Judgement {
  const { pathway, hospitalDischargedOn } = course.facts;
  if (pathway !== 'after-exacerbation') {
    return leftOut('not-after-exacerbation', 'Not referred after an exacerbation');
  }
  if (hospitalDischargedOn === null) {
    return leftOut('hospital-discharge-not-recorded', 'Day of hospital discharge not recorded');
  }
  return judgeStartedBy(course, hospitalDischargedOn, deadlineAfter(hospitalDischargedOn));
}
