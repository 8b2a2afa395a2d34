import { judgeCompleted } from '../completed.js';
import type { Indicator } from '../indicator.js';
import { JONES_2014 } from '../sources.js';

/** Completed, of those referred. */
export const COMPLETED_OF_REFERRED: Indicator = {
  id: 'completed-of-referred',
  version: 1,
  title: 'Completed, of those referred',
  cohort: 'referral',
  targetKey: 'completed-of-referred',
  numerator: "Completed by the team's reading, at any time up to the data cut",
  denominator: 'Referrals received in the period; open while a start or completion is possible',
  exclusions: 'Died, moved away or transferred before the start',
  source: JONES_2014,
  judge: (course, { settings }) => judgeCompleted(course, settings.completionReading, 'referred'),
};
