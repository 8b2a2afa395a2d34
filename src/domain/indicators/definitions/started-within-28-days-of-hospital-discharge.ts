import { judgeAfterHospital } from '../after-hospital.js';
import type { Indicator } from '../indicator.js';
import { NICE_QS10_2016 } from '../sources.js';

/** Started within four weeks of leaving hospital; four weeks are 28 days, which is not a calendar month. */
export const STARTED_WITHIN_28_DAYS_OF_HOSPITAL_DISCHARGE: Indicator = {
  id: 'started-within-28-days-of-hospital-discharge',
  version: 1,
  title: 'Started within 28 days of hospital discharge',
  cohort: 'referral',
  targetKey: 'started-within-28-days-of-hospital-discharge',
  numerator:
    'First supervised session attended on day 28 after the hospital discharge or before; day 28 counts',
  denominator: 'Referrals after an exacerbation received in the period; open until day 28 has passed',
  exclusions:
    'Not after an exacerbation; day of hospital discharge not recorded; died, moved away or transferred by day 28 ' +
    'without a start',
  source: NICE_QS10_2016,
  judge: (course) => judgeAfterHospital(course, () => 28),
};
