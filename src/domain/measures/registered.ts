// Written by `npm run catalogue` from the definition files beside it. Do not edit.
import type { WalkTest } from './walk-test.js';
import type { SitToStandTest } from './sit-to-stand-test.js';
import type { Questionnaire } from './questionnaire.js';
import type { PhysicalTest } from './physical-test.js';
import { ENDURANCE_SHUTTLE_WALK } from './walk-tests/endurance-shuttle-walk.js';
import { INCREMENTAL_SHUTTLE_WALK } from './walk-tests/incremental-shuttle-walk.js';
import { INCREMENTAL_SHUTTLE_WALK_15_LEVEL } from './walk-tests/incremental-shuttle-walk-15-level.js';
import { SIX_MINUTE_WALK } from './walk-tests/six-minute-walk.js';
import { TWO_MINUTE_WALK } from './walk-tests/two-minute-walk.js';
import { FIVE_REPETITION_SIT_TO_STAND } from './sit-to-stand/five-repetition-sit-to-stand.js';
import { ONE_MINUTE_SIT_TO_STAND } from './sit-to-stand/one-minute-sit-to-stand.js';
import { THIRTY_SECOND_SIT_TO_STAND } from './sit-to-stand/thirty-second-sit-to-stand.js';
import { BRISTOL_COPD_KNOWLEDGE_QUESTIONNAIRE } from './questionnaires/bristol-copd-knowledge-questionnaire.js';
import { CHRONIC_RESPIRATORY_QUESTIONNAIRE } from './questionnaires/chronic-respiratory-questionnaire.js';
import { COPD_ASSESSMENT_TEST } from './questionnaires/copd-assessment-test.js';
import { EQ_5D_5L } from './questionnaires/eq-5d-5l.js';
import { GENERALISED_ANXIETY_DISORDER_7 } from './questionnaires/generalised-anxiety-disorder-7.js';
import { HOSPITAL_ANXIETY_AND_DEPRESSION_SCALE } from './questionnaires/hospital-anxiety-and-depression-scale.js';
import { KINGS_BRIEF_ILD_QUESTIONNAIRE } from './questionnaires/kings-brief-ild-questionnaire.js';
import { LUNG_INFORMATION_NEEDS_QUESTIONNAIRE } from './questionnaires/lung-information-needs-questionnaire.js';
import { MMRC_DYSPNOEA } from './questionnaires/mmrc-dyspnoea.js';
import { MRC_DYSPNOEA } from './questionnaires/mrc-dyspnoea.js';
import { PATIENT_HEALTH_QUESTIONNAIRE_9 } from './questionnaires/patient-health-questionnaire-9.js';
import { PULMONARY_REHABILITATION_ADAPTED_INDEX_OF_SELF_EFFICACY } from './questionnaires/pulmonary-rehabilitation-adapted-index-of-self-efficacy.js';
import { ST_GEORGES_RESPIRATORY_QUESTIONNAIRE } from './questionnaires/st-georges-respiratory-questionnaire.js';
import { FOUR_METRE_GAIT_SPEED } from './physical-tests/four-metre-gait-speed.js';
import { HANDGRIP_STRENGTH } from './physical-tests/handgrip-strength.js';
import { QUADRICEPS_STRENGTH } from './physical-tests/quadriceps-strength.js';
import { SHORT_PHYSICAL_PERFORMANCE_BATTERY } from './physical-tests/short-physical-performance-battery.js';

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
  BRISTOL_COPD_KNOWLEDGE_QUESTIONNAIRE,
  CHRONIC_RESPIRATORY_QUESTIONNAIRE,
  COPD_ASSESSMENT_TEST,
  EQ_5D_5L,
  GENERALISED_ANXIETY_DISORDER_7,
  HOSPITAL_ANXIETY_AND_DEPRESSION_SCALE,
  KINGS_BRIEF_ILD_QUESTIONNAIRE,
  LUNG_INFORMATION_NEEDS_QUESTIONNAIRE,
  MMRC_DYSPNOEA,
  MRC_DYSPNOEA,
  PATIENT_HEALTH_QUESTIONNAIRE_9,
  PULMONARY_REHABILITATION_ADAPTED_INDEX_OF_SELF_EFFICACY,
  ST_GEORGES_RESPIRATORY_QUESTIONNAIRE,
];

export const PHYSICAL_TESTS: readonly PhysicalTest[] = [
  FOUR_METRE_GAIT_SPEED,
  HANDGRIP_STRENGTH,
  QUADRICEPS_STRENGTH,
  SHORT_PHYSICAL_PERFORMANCE_BATTERY,
];
