import type { Indicator } from '../indicator.js';
import { RCP_SERVICES_2017 } from '../sources.js';
import { judgeStartedWithin } from '../started-by.js';

/**
 * Started within 90 days of receipt, of all who were referred: those still waiting and those who left are in it, so that
 * a long list cannot look short.
 */
export const STARTED_WITHIN_90_DAYS: Indicator = {
  id: 'started-within-90-days',
  version: 1,
  title: 'Started within 90 days of receipt',
  cohort: 'referral',
  targetKey: 'started-within-90-days',
  numerator: 'First supervised session attended on day 90 after receipt or before; day 90 counts',
  denominator:
    'Referrals received in the period, by either pathway, those who declined or left included; open until day 90 has passed',
  exclusions: 'Died, moved away or transferred by day 90 without a start',
  source: RCP_SERVICES_2017,
  judge: (course) => judgeStartedWithin(course, course.facts.receivedOn, 90),
};
