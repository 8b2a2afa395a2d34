import { toNumber } from '../../domain/exact/fraction.js';
import { findQuestionnaire } from '../../domain/measures/catalogue.js';
import { eqProfile } from '../../domain/measures/eq-profile.js';
import type { ItemScore } from '../../domain/measures/questionnaire.js';
import { scoreQuestionnaire } from '../../domain/measures/score-items.js';
import type { App } from '../app-types.js';
import { presentCitation } from '../catalogue/citation-schema.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ScoreCalculated, ScoreCalculation } from './calculation-schema.js';

/** The route that scores a questionnaire from its items. */
export function scoreCalculation(app: App): void {
  app.post(
    '/calculations/score',
    {
      schema: {
        operationId: 'calculateScore',
        summary: 'Score a questionnaire from its items',
        tags: ['calculations'],
        body: ScoreCalculation,
        response: { 200: ScoreCalculated, ...problemResponses(400, 401, 404, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { items } = request.body;
      const questionnaire = findQuestionnaire(request.body.questionnaire);
      if (questionnaire === undefined) {
        return sendProblem(reply, problemFor({ code: 'not-found', what: 'measure' }));
      }
      const scored = scoreQuestionnaire(questionnaire, items);
      if (scored.kind === 'refused') {
        const faults = scored.faults.map((fault) => ({ ...fault, pointer: `/items${fault.pointer}` }));
        return sendProblem(reply, problemFor({ code: 'rules-broken', faults }));
      }
      const { text, citation } = questionnaire.missingItemRule;
      return reply.send({
        questionnaire: questionnaire.id,
        scores: scored.scores.map(presentScore),
        profile: questionnaire.scoreItems === null ? eqProfile(items) : null,
        missingItemRule: { text, source: presentCitation(citation) },
      });
    },
  );
}

function presentScore(score: ItemScore) {
  const { measureId } = score;
  if (score.kind === 'not-scored') {
    return { measureId, value: null, answeredItems: null, ofItems: null, notScoredReason: score.reason };
  }
  const { answeredItems, ofItems } = score;
  return { measureId, value: toNumber(score.value), answeredItems, ofItems, notScoredReason: null };
}
