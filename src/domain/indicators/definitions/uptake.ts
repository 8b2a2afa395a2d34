import type { Indicator } from '../indicator.js';
import { JONES_2014 } from '../sources.js';
import { judgeStarted } from '../started-by.js';

/** Started at all, of those referred. */
export const UPTAKE: Indicator = {
  id: 'uptake',
  version: 1,
  title: 'Started, of those referred',
  cohort: 'referral',
  targetKey: 'uptake',
  numerator: 'First supervised session attended, at any time up to the data cut',
  denominator: 'Referrals received in the period; open while the person is waiting',
  exclusions: 'Died, moved away or transferred before the start',
  source: JONES_2014,
  judge: (course) => judgeStarted(course),
};
