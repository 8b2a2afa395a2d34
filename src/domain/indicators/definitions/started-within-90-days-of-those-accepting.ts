import { leftBeforeStart } from '../../pathway/leaving.js';
import type { Indicator } from '../indicator.js';
import { leftOut } from '../judge.js';
import { RCP_STEPS_2016 } from '../sources.js';
import { didNotAccept, judgeStartedWithin } from '../started-by.js';

/**
 * The same wait of those who took the offer up, as the published standard counts it; it says nothing of those who did
 * not, so it stands beside the figure of all referrals and not in its place.
 */
export const STARTED_WITHIN_90_DAYS_OF_THOSE_ACCEPTING: Indicator = {
  id: 'started-within-90-days-of-those-accepting',
  version: 1,
  title: 'Started within 90 days, of those who accepted',
  cohort: 'referral',
  targetKey: 'started-within-90-days-of-those-accepting',
  numerator: 'First supervised session attended on day 90 after receipt or before; day 90 counts',
  denominator: 'Referrals received in the period; open until day 90 has passed',
  exclusions:
    'Declined, did not reply or was found not suitable before a start, whenever that was; ' +
    'died, moved away or transferred by day 90 without a start',
  source: RCP_STEPS_2016,
  judge: (course) => {
    const left = leftBeforeStart(course);
    if (left !== null && didNotAccept(left)) {
      return leftOut('did-not-accept', 'Declined, did not reply, or was not suitable');
    }
    return judgeStartedWithin(course, course.facts.receivedOn, 90);
  },
};
