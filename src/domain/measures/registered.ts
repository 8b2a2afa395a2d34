// Written by `npm run catalogue` from the definition files beside it. Do not edit.
import type { WalkTest } from './walk-test.js';
import type { SitToStandTest } from './sit-to-stand-test.js';
import type { Questionnaire } from './questionnaire.js';
import { ENDURANCE_SHUTTLE_WALK } from './walk-tests/endurance-shuttle-walk.js';
import { INCREMENTAL_SHUTTLE_WALK } from './walk-tests/incremental-shuttle-walk.js';
import { INCREMENTAL_SHUTTLE_WALK_15_LEVEL } from './walk-tests/incremental-shuttle-walk-15-level.js';
import { SIX_MINUTE_WALK } from './walk-tests/six-minute-walk.js';
import { TWO_MINUTE_WALK } from './walk-tests/two-minute-walk.js';
import { FIVE_REPETITION_SIT_TO_STAND } from './sit-to-stand/five-repetition-sit-to-stand.js';
import { ONE_MINUTE_SIT_TO_STAND } from './sit-to-stand/one-minute-sit-to-stand.js';
import { THIRTY_SECOND_SIT_TO_STAND } from './sit-to-stand/thirty-second-sit-to-stand.js';
import { CHRONIC_RESPIRATORY_QUESTIONNAIRE } from './questionnaires/chronic-respiratory-questionnaire.js';
import { COPD_ASSESSMENT_TEST } from './questionnaires/copd-assessment-test.js';
import { GENERALISED_ANXIETY_DISORDER_7 } from './questionnaires/generalised-anxiety-disorder-7.js';
import { HOSPITAL_ANXIETY_AND_DEPRESSION_SCALE } from './questionnaires/hospital-anxiety-and-depression-scale.js';
import { MRC_DYSPNOEA } from './questionnaires/mrc-dyspnoea.js';
import { PATIENT_HEALTH_QUESTIONNAIRE_9 } from './questionnaires/patient-health-questionnaire-9.js';

export const WALK_TESTS: readonly WalkTest[] = [
  ENDURANCE_SHUTTLE_WALK,
  INCREMENTAL_SHUTTLE_WALK,
  INCREMENTAL_SHUTTLE_WALK_15_LEVEL,
  SIX_MINUTE_WALK,
  TWO_MINUTE_WALK,
];

export const SIT_TO_STAND_TESTS: readonly SitToStandTest[] = [
  FIVE_REPETITION_SIT_TO_STAND,
  ONE_MINUTE_SIT_TO_STAND,
  THIRTY_SECOND_SIT_TO_STAND,
];

export const QUESTIONNAIRES: readonly Questionnaire[] = [
  CHRONIC_RESPIRATORY_QUESTIONNAIRE,
  COPD_ASSESSMENT_TEST,
  GENERALISED_ANXIETY_DISORDER_7,
  HOSPITAL_ANXIETY_AND_DEPRESSION_SCALE,
  MRC_DYSPNOEA,
  PATIENT_HEALTH_QUESTIONNAIRE_9,
];
