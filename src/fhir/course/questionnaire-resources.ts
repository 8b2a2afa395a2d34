import type { Assessment, QuestionnaireEntry, Score } from '../../domain/assessment/assessment.js';
import { toNumber } from '../../domain/exact/fraction.js';
import { findMeasure, findQuestionnaire } from '../../domain/measures/catalogue.js';
import { derivedId, listed, named, referenceTo } from '../elements.js';
import type { Element, Resource } from '../elements.js';
import { extensionUrl } from '../vocabulary.js';
import { measureCode, measured, notDone } from './observation.js';
import type { Finding, Visit } from './observation.js';

/**
 * Questionnaires that were filled in: items by their printed number and scores by the id of their measure, without any
 * wording. An item that was not answered stands without an answer.
 *
 * @source FHIR R4 (4.0.1), QuestionnaireResponse
 */
export function questionnaireResponses({ patientId, assessment }: Visit): readonly Resource[] {
  return assessment.entry.questionnaires.flatMap((filled) => {
    if (filled.notDoneReason !== null) return [];
    return [
      {
        resourceType: 'QuestionnaireResponse',
        id: responseId(assessment, filled.questionnaire),
        extension: listed(
          filled.form === null ? [] : [{ url: extensionUrl('form'), valueCode: filled.form }],
        ),
        questionnaire: `urn:tidemark:questionnaire:${filled.questionnaire}`,
        status: assessment.correctionReason === null ? 'completed' : 'amended',
        subject: referenceTo(patientId),
        encounter: referenceTo(assessment.id),
        authored: assessment.entry.assessedOn,
        item: listed([...itemsOf(filled), ...scoresOf(assessment, filled).map(scoreItem)]),
      },
    ];
  });
}

/** The scores of questionnaires, each worked out from its response, and questionnaires that were not done. */
export function scoreFindings(assessment: Assessment): readonly Finding[] {
  return assessment.entry.questionnaires.flatMap((filled): readonly Finding[] => {
    const { questionnaire: id, notDoneReason } = filled;
    if (notDoneReason !== null) {
      const code = named(findQuestionnaire(id)?.name ?? id);
      return [{ key: `questionnaire:${id}`, code, value: notDone(notDoneReason) }];
    }
    return scoresOf(assessment, filled).flatMap((score) => {
      const measure = findMeasure(score.measure);
      if (measure === undefined) return [];
      return [
        {
          key: `score:${measure.id}`,
          code: measureCode(measure),
          value: measured(score.value, measure),
          derivedFromId: responseId(assessment, id),
        },
      ];
    });
  });
}

function itemsOf({ items }: QuestionnaireEntry): readonly Element[] {
  return (items ?? []).map((answer, index) => ({
    linkId: String(index + 1),
    answer: answer === null ? undefined : [{ valueInteger: answer }],
  }));
}

function scoreItem({ measure, value }: Score): Element {
  return { linkId: measure, answer: [{ valueDecimal: toNumber(value) }] };
}

function scoresOf({ scores }: Assessment, { questionnaire }: QuestionnaireEntry): readonly Score[] {
  return scores.filter((score) => score.questionnaire === questionnaire);
}

function responseId({ id }: Assessment, questionnaire: string): string {
  return derivedId(`questionnaire:${id}:${questionnaire}`);
}
