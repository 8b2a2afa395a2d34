import { daysBetween } from '../../calendar/plain-date.js';
import { leftBeforeStart } from '../../pathway/leaving.js';
import type { Indicator } from '../indicator.js';
import { counts, countsNot, stillOpen } from '../judge.js';
import { JONES_2014 } from '../sources.js';
import { judgeEarlyLeaving } from '../started-by.js';

/** Came to a baseline assessment, of those referred. */
export const ASSESSED_OF_REFERRED: Indicator = {
  id: 'assessed-of-referred',
  version: 1,
  title: 'Assessed, of those referred',
  cohort: 'referral',
  targetKey: 'assessed-of-referred',
  numerator: 'Baseline assessment with at least one result, at any time up to the data cut',
  denominator:
    'Referrals received in the period; open while the person is waiting. A start without an assessment counts as not assessed',
  exclusions: 'Died, moved away or transferred before an assessment and before the start',
  source: JONES_2014,
  judge: (course) => {
    const { receivedOn } = course.facts;
    if (course.assessedOn !== null) {
      return counts(`Assessed on day ${daysBetween(receivedOn, course.assessedOn)}`);
    }
    if (course.startedOn !== null) return countsNot('Started without a baseline assessment');
    const left = leftBeforeStart(course);
    if (left !== null) return judgeEarlyLeaving(left, receivedOn);
    return stillOpen(`Waiting on day ${daysBetween(receivedOn, course.asAt)}`);
  },
};
