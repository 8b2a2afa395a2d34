import { findPhysicalTest, findQuestionnaire } from '../measures/catalogue.js';
import type { ItemScore } from '../measures/questionnaire.js';
import { scoreQuestionnaire } from '../measures/score-items.js';
import { scorePhysicalTest } from '../measures/score-parts.js';
import type { CheckedAssessment, PhysicalTestEntry, QuestionnaireEntry } from './assessment.js';

/** A measure that has no number although its test was done, and why. */
export interface NotScored {
  readonly measure: string;
  /** For readers, such as `2 of 5 items answered; at least 3 are needed`. */
  readonly reason: string;
}

/**
 * Why measures of an assessment have no score: worked out again from the items and parts, which are kept as given.
 *
 * A measure whose score was typed is not among them, nor one of a test that was not done, which has its own reason.
 *
 * @returns in the order of the entry; empty where everything that was answered has its score
 * @example CRQ with two of five items of dyspnoea -> crq-dyspnoea and crq-total, each with its reason
 */
export function notScoredOf(assessment: CheckedAssessment): readonly NotScored[] {
  const { entry, scores, physicalResults } = assessment;
  const known = new Set([...scores, ...physicalResults].map(({ measure }) => measure));
  const questionnaires = entry.questionnaires.flatMap((questionnaire) => fromItems(questionnaire, known));
  return [...questionnaires, ...entry.physicalTests.flatMap(fromParts)].flatMap((score) =>
    score.kind === 'scored' || known.has(score.measureId)
      ? []
      : [{ measure: score.measureId, reason: score.reason }],
  );
}

function fromItems(
  { questionnaire: id, items, notDoneReason }: QuestionnaireEntry,
  known: ReadonlySet<string>,
): readonly ItemScore[] {
  const questionnaire = findQuestionnaire(id);
  if (questionnaire === undefined || items === null || notDoneReason !== null) return [];
  // Where every measure has its score, as nearly always, there is nothing to work out again.
  if (questionnaire.measures.every((measure) => known.has(measure.id))) return [];
  const scored = scoreQuestionnaire(questionnaire, items);
  return scored.kind === 'scored' ? scored.scores : [];
}

function fromParts({ test: id, parts, notDoneReason }: PhysicalTestEntry): readonly ItemScore[] {
  const test = findPhysicalTest(id);
  if (test === undefined || parts === null || notDoneReason !== null) return [];
  const scored = scorePhysicalTest(test, parts);
  return scored.kind === 'scored' ? scored.scores : [];
}
