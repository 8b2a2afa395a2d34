import type { Citation } from '../../evidence/citation.js';
import { commonPractice } from '../../measures/measure.js';
import type { SafetyItem, SafetyList } from '../safety-list.js';
import { COMMUNITY_CHECKLIST_2016 } from '../safety-sources.js';

const CUSTOM = commonPractice('home-exercise-practice');

const POST_COVID_LIMITS: Citation = {
  id: 'post-covid-limits',
  text: 'Recommendations for people discharged after COVID-19, Table 2 (PMC10261367, table read)',
  doi: null,
  status: 'retrieved',
};

/** What holds for exercise and tests at home or by video. */
export const EXERCISE_AT_HOME: SafetyList = {
  id: 'exercise-at-home',
  title: 'Exercise and tests at home',
  stage: 'exercise-at-home',
  items: [
    rule('home-same-contraindications', 'The absolute contraindications are those of the centre', CUSTOM),
    rule('home-no-unsupervised-walk-test', 'No walk test to exhaustion without supervision', CUSTOM),
    rule('home-rescue-medication', 'Rescue medication is within reach', COMMUNITY_CHECKLIST_2016),
    rule('home-emergency-plan', 'What to do in an emergency is agreed beforehand', CUSTOM),
    rule('home-second-person', 'A second person is there, or a live call is open', CUSTOM),
    rule(
      'home-not-when-unwell',
      'No exercise on a day with fever, chest pain, or symptoms that are new or worse',
      CUSTOM,
    ),
    rule(
      'home-not-below-agreed-saturation',
      'No exercise when SpO2 at rest is below the lowest value agreed for the person',
      CUSTOM,
    ),
    rule(
      'home-test-not-compared',
      'A walk or sit-to-stand test done at home is marked, and not compared with one done on a course',
      CUSTOM,
    ),
    rule(
      'home-post-covid-limits',
      'After COVID-19 one list refuses exercise with a heart rate above 100, a blood pressure below 90/60 or above ' +
        '140/90 mmHg, or an SpO2 of 95 % or less',
      POST_COVID_LIMITS,
      'Much tighter than what people with COPD can meet, and not meant for them. Printed for reference; nothing is judged by it.',
    ),
  ],
};

function rule(id: string, text: string, citation: Citation, note: string | null = null): SafetyItem {
  return { id, text, strength: 'local', canBeFound: false, note, citation, furtherSources: [] };
}
