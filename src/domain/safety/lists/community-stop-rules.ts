import type { SafetyItem, SafetyList } from '../safety-list.js';
import { COMMUNITY_CHECKLIST_2016 } from '../safety-sources.js';

/** What one community programme adds to the stop rules, for tests and training. Chest pain stands in both lists. */
export const COMMUNITY_STOP_RULES: SafetyList = {
  id: 'community-stop-rules',
  title: 'When to stop, as one community programme has it',
  stage: 'during-a-test',
  items: [
    item('community-new-arrhythmia', 'Abnormal heart rhythm that is new', true),
    item('community-dizziness', 'Dizziness', true),
    item('community-nausea', 'Nausea', true),
    item('community-rest-below-85', 'Make the person rest when SpO2 falls below 85 %', false),
    item(
      'community-heart-rate-limit',
      'End the test when the heart rate stays above 210 less 0.65 times the age in years',
      false,
    ),
  ],
};

function item(id: string, text: string, canBeFound: boolean): SafetyItem {
  return {
    id,
    text,
    strength: 'local',
    canBeFound,
    note: null,
    citation: COMMUNITY_CHECKLIST_2016,
    furtherSources: [],
  };
}
