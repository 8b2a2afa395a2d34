import { judgeCompleted } from '../completed.js';
import type { Indicator } from '../indicator.js';
import { RCP_SERVICES_2017 } from '../sources.js';

/** Completed, of those referred in the period who were assessed: the denominator of the published target. */
export const COMPLETED_OF_ASSESSED: Indicator = {
  id: 'completed-of-assessed',
  version: 1,
  title: 'Completed, of those assessed',
  cohort: 'referral',
  targetKey: 'completed-of-assessed',
  numerator: "Completed by the team's reading, at any time up to the data cut",
  denominator:
    'Referrals received in the period with a baseline assessment; open while a start or completion is possible',
  exclusions: 'No baseline assessment by the data cut; died, moved away or transferred before the start',
  source: RCP_SERVICES_2017,
  judge: (course, { settings }) => judgeCompleted(course, settings.completionReading, 'assessed'),
};
