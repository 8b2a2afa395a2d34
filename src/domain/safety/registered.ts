// Written by `npm run catalogue` from the definition files beside it. Do not edit.
import type { SafetyList } from './safety-list.js';
import { ABSOLUTE_CONTRAINDICATIONS } from './lists/absolute-contraindications.js';
import { COMMUNITY_STOP_RULES } from './lists/community-stop-rules.js';
import { CONDUCT_OF_TESTS } from './lists/conduct-of-tests.js';
import { EXERCISE_AT_HOME } from './lists/exercise-at-home.js';
import { RELATIVE_CONTRAINDICATIONS } from './lists/relative-contraindications.js';
import { STOP_RULES } from './lists/stop-rules.js';

export const SAFETY_CHECKLIST: readonly SafetyList[] = [
  ABSOLUTE_CONTRAINDICATIONS,
  COMMUNITY_STOP_RULES,
  CONDUCT_OF_TESTS,
  EXERCISE_AT_HOME,
  RELATIVE_CONTRAINDICATIONS,
  STOP_RULES,
];
