import type { Indicator } from '../indicator.js';
import { countsIf, leftOut } from '../judge.js';
import { BTS_QUALITY_STANDARDS_2014 } from '../sources.js';

/** Measured again at discharge, of those discharged who had started; deaths, moves and drop-outs are in it. */
export const DISCHARGE_ASSESSMENT_DONE: Indicator = {
  id: 'discharge-assessment-done',
  version: 1,
  title: 'Discharge assessment done',
  cohort: 'discharge',
  targetKey: 'discharge-assessment-done',
  numerator: 'Discharge assessment with at least one result',
  denominator: 'Discharged in the period and had started, whatever the reason for closure',
  exclusions: 'Did not start',
  source: BTS_QUALITY_STANDARDS_2014,
  judge: (course) => {
    if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
    return countsIf(
      course.dischargeAssessedOn !== null,
      'Discharge assessment done',
      'Closed without a discharge assessment',
    );
  },
};
