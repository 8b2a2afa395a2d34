import type { PlainDate } from '../calendar/plain-date.js';
import type { Course } from '../pathway/course.js';
import type { Judgement } from './indicator.js';
import { leftOut } from './judge.js';
import { judgeStartedWithin } from './started-by.js';

/**
 * Whether a person referred after an exacerbation started within some days of the hospital discharge.
 *
 * @param lastDayAfter number of the last day that counts, day 0 being the day of discharge
 * @returns left out where the clock does not apply or its first day is not recorded
 */
export function judgeAfterHospital(
  course: Course,
  lastDayAfter: (dischargedOn: PlainDate) => number,
): Judgement {
  const { pathway, hospitalDischargedOn } = course.facts;
  if (pathway !== 'after-exacerbation') {
    return leftOut('not-after-exacerbation', 'Not referred after an exacerbation');
  }
  if (hospitalDischargedOn === null) {
    return leftOut('hospital-discharge-not-recorded', 'Day of hospital discharge not recorded');
  }
  return judgeStartedWithin(course, hospitalDischargedOn, lastDayAfter(hospitalDischargedOn));
}
