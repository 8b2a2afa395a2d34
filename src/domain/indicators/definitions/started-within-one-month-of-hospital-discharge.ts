import { addMonths, daysBetween } from '../../calendar/plain-date.js';
import { judgeAfterHospital } from '../after-hospital.js';
import type { Indicator } from '../indicator.js';
import { BTS_GUIDELINE_2013 } from '../sources.js';

/** Started within one calendar month of leaving hospital: 28 to 31 days, which is not four weeks. */
export const STARTED_WITHIN_ONE_MONTH_OF_HOSPITAL_DISCHARGE: Indicator = {
  id: 'started-within-one-month-of-hospital-discharge',
  version: 1,
  title: 'Started within one month of hospital discharge',
  cohort: 'referral',
  targetKey: 'started-within-one-month-of-hospital-discharge',
  numerator:
    'First supervised session attended by the same day of the next month (its last day where there is no such day)',
  denominator: 'Referrals after an exacerbation received in the period; open until that day has passed',
  exclusions:
    'Not after an exacerbation; day of hospital discharge not recorded; died, moved away or transferred by that day ' +
    'without a start',
  source: BTS_GUIDELINE_2013,
  judge: (course) =>
    judgeAfterHospital(course, (dischargedOn) => daysBetween(dischargedOn, addMonths(dischargedOn, 1))),
};
