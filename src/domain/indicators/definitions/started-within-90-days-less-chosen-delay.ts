import { chosenDelayDays } from '../../pathway/chosen-delay.js';
import type { Indicator } from '../indicator.js';
import { OWN_RULE } from '../sources.js';
import { judgeStartedWithin } from '../started-by.js';

/**
 * The wait of 90 days once more, less the days that the person chose. It stands beside the wait without pauses and not in
 * its place, so that no list grows short by it.
 */
export const STARTED_WITHIN_90_DAYS_LESS_CHOSEN_DELAY: Indicator = {
  id: 'started-within-90-days-less-chosen-delay',
  version: 1,
  title: 'Started within 90 days, less days that the person chose',
  cohort: 'referral',
  targetKey: 'started-within-90-days-less-chosen-delay',
  numerator:
    'First supervised session attended on day 90 after receipt or before, without the days from a day that was offered and declined to the next day offered',
  denominator:
    'Referrals received in the period, by either pathway, those who declined or left included; open until day 90 has passed by this count',
  exclusions: 'Died, moved away or transferred by day 90 without a start',
  source: OWN_RULE,
  judge: (course) => judgeStartedWithin(course, course.facts.receivedOn, 90, chosenDelayDays(course)),
};
