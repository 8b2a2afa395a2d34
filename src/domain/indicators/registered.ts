// Written by `npm run catalogue` from the definition files beside it. Do not edit.
import type { Indicator } from './indicator.js';
import { ASSESSED_OF_REFERRED } from './definitions/assessed-of-referred.js';
import { COMPLETED_OF_ASSESSED } from './definitions/completed-of-assessed.js';
import { COMPLETED_OF_REFERRED } from './definitions/completed-of-referred.js';
import { COMPLETED_OF_STARTED } from './definitions/completed-of-started.js';
import { DISCHARGE_ASSESSMENT_DONE } from './definitions/discharge-assessment-done.js';
import { EXERCISE_PLAN_GIVEN } from './definitions/exercise-plan-given.js';
import { PRACTICE_WALK_DONE } from './definitions/practice-walk-done.js';
import { RIGHT_COURSE_LENGTH } from './definitions/right-course-length.js';
import { STARTED_WITHIN_28_DAYS_OF_HOSPITAL_DISCHARGE } from './definitions/started-within-28-days-of-hospital-discharge.js';
import { STARTED_WITHIN_90_DAYS } from './definitions/started-within-90-days.js';
import { STARTED_WITHIN_90_DAYS_LESS_CHOSEN_DELAY } from './definitions/started-within-90-days-less-chosen-delay.js';
import { STARTED_WITHIN_90_DAYS_OF_THOSE_ACCEPTING } from './definitions/started-within-90-days-of-those-accepting.js';
import { STARTED_WITHIN_ONE_MONTH_OF_HOSPITAL_DISCHARGE } from './definitions/started-within-one-month-of-hospital-discharge.js';
import { THREE_DOMAINS_AT_BOTH_ENDS } from './definitions/three-domains-at-both-ends.js';
import { TWICE_WEEKLY_FOR_SIX_WEEKS } from './definitions/twice-weekly-for-six-weeks.js';
import { UPTAKE } from './definitions/uptake.js';

export const INDICATORS: readonly Indicator[] = [
  ASSESSED_OF_REFERRED,
  COMPLETED_OF_ASSESSED,
  COMPLETED_OF_REFERRED,
  COMPLETED_OF_STARTED,
  DISCHARGE_ASSESSMENT_DONE,
  EXERCISE_PLAN_GIVEN,
  PRACTICE_WALK_DONE,
  RIGHT_COURSE_LENGTH,
  STARTED_WITHIN_28_DAYS_OF_HOSPITAL_DISCHARGE,
  STARTED_WITHIN_90_DAYS,
  STARTED_WITHIN_90_DAYS_LESS_CHOSEN_DELAY,
  STARTED_WITHIN_90_DAYS_OF_THOSE_ACCEPTING,
  STARTED_WITHIN_ONE_MONTH_OF_HOSPITAL_DISCHARGE,
  THREE_DOMAINS_AT_BOTH_ENDS,
  TWICE_WEEKLY_FOR_SIX_WEEKS,
  UPTAKE,
];
