import type { CheckedAssessment } from '../assessment/assessment.js';
import { findQuestionnaire } from '../measures/catalogue.js';
import { promptsFor } from '../measures/prompts.js';
import type { SafetyCaution } from './safety-caution.js';
import { cautionToAcknowledge } from './safety-caution.js';

/** What completed questionnaires ask a clinician to look at; the acknowledgement is the record of who was told, and when. */
export function questionnaireCautions({
  entry,
  scores,
}: Pick<CheckedAssessment, 'entry' | 'scores'>): readonly SafetyCaution[] {
  return entry.questionnaires.flatMap(({ questionnaire: id, items, notDoneReason }) => {
    const questionnaire = findQuestionnaire(id);
    if (questionnaire === undefined || notDoneReason !== null) return [];
    const own = scores.filter((score) => score.questionnaire === id);
    const prompts = promptsFor(
      questionnaire,
      items,
      new Map(own.map((score) => [score.measure, score.value])),
    );
    return prompts.map(cautionToAcknowledge);
  });
}
