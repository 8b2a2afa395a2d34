import { classify } from '../../domain/change/change.js';
import { chooseThresholds } from '../../domain/change/choose-threshold.js';
import { compare, negate, subtract, toNumber } from '../../domain/exact/fraction.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import { findMeasure, findQuestionnaire } from '../../domain/measures/catalogue.js';
import { smallestChangeReaching } from '../../domain/measures/grid.js';
import type { Measure } from '../../domain/measures/measure.js';
import { scoreQuestionnaire } from '../../domain/measures/score-items.js';
import { readTypedScore } from '../../domain/measures/typed-score.js';
import { findEquation } from '../../domain/prediction/catalogue.js';
import {
  isBelowLowerLimit,
  percentPredicted,
  PREDICTION_CAUTION,
  predictResult,
} from '../../domain/prediction/predict.js';
import type { Fault } from '../../domain/refusal/refusal.js';
import type { App } from '../app-types.js';
import { presentCitation } from '../catalogue/catalogue-schema.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import {
  ChangeCalculated,
  ChangeCalculation,
  PredictionCalculated,
  PredictionCalculation,
  ScoreCalculated,
  ScoreCalculation,
} from './calculation-schema.js';

const tags = ['calculations'];
const PROBLEMS = problemResponses(400, 401, 404, 413, 415, 422);

/** Calculations without a record, so that others can check ours: nothing is stored. */
export function calculationRoutes(app: App): void {
  app.post(
    '/calculations/prediction',
    {
      schema: {
        operationId: 'calculatePrediction',
        summary: 'Predict a result by one equation',
        tags,
        body: PredictionCalculation,
        response: { 200: PredictionCalculated, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const { equationId, value, ...person } = request.body;
      const equation = findEquation(equationId);
      if (equation === null) return sendProblem(reply, problemFor({ code: 'not-found', what: 'equation' }));
      const prediction = predictResult(equation, person);
      if (prediction.kind === 'not-predicted') {
        return reply.send({ ...NO_PREDICTION, equationId, notPredictedReason: prediction.words });
      }
      const { predicted, lowerLimit, beyondAgesStudied, ceilingNote } = prediction;
      return reply.send({
        equationId,
        predicted,
        lowerLimit,
        beyondAgesStudied,
        ceilingNote,
        percentPredicted: value === null ? null : percentPredicted(value, predicted),
        isBelowLowerLimit: value === null ? null : isBelowLowerLimit(value, lowerLimit),
        notPredictedReason: null,
        caution: PREDICTION_CAUTION,
      });
    },
  );

  app.post(
    '/calculations/score',
    {
      schema: {
        operationId: 'calculateScore',
        summary: 'Score a questionnaire from its items',
        tags,
        body: ScoreCalculation,
        response: { 200: ScoreCalculated, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const questionnaire = findQuestionnaire(request.body.questionnaire);
      if (questionnaire === undefined) {
        return sendProblem(reply, problemFor({ code: 'not-found', what: 'measure' }));
      }
      const scored = scoreQuestionnaire(questionnaire, request.body.items);
      if (scored.kind === 'refused') {
        const faults = scored.faults.map((fault) => ({ ...fault, pointer: `/items${fault.pointer}` }));
        return sendProblem(reply, problemFor({ code: 'rules-broken', faults }));
      }
      return reply.send({
        questionnaire: questionnaire.id,
        scores: scored.scores.map((score) =>
          score.kind === 'scored'
            ? {
                ...NO_SCORE,
                measureId: score.measureId,
                value: toNumber(score.value),
                answeredItems: score.answeredItems,
                ofItems: score.ofItems,
              }
            : { ...NO_SCORE, measureId: score.measureId, notScoredReason: score.reason },
        ),
        missingItemRule: {
          text: questionnaire.missingItemRule.text,
          source: presentCitation(questionnaire.missingItemRule.citation),
        },
      });
    },
  );

  app.post(
    '/calculations/change',
    {
      schema: {
        operationId: 'calculateChange',
        summary: 'Judge a change against the minimal important difference',
        tags,
        body: ChangeCalculation,
        response: { 200: ChangeCalculated, ...PROBLEMS },
      },
    },
    async (request, reply) => {
      const { measureId, baseline, discharge, diagnosis, thresholdId } = request.body;
      const measure = findMeasure(measureId);
      if (measure === undefined)
        return sendProblem(reply, problemFor({ code: 'not-found', what: 'measure' }));
      const ends = readEnds(measure, { baseline, discharge });
      if (ends.kind === 'faulty') {
        return sendProblem(reply, problemFor({ code: 'rules-broken', faults: ends.faults }));
      }
      if (thresholdId !== null && !isUsable(measure, thresholdId)) {
        const message = 'The measure has no threshold of this id that can judge an improvement.';
        const faults = [{ pointer: '/thresholdId', code: 'unknown-threshold', message }];
        return sendProblem(reply, problemFor({ code: 'rules-broken', faults }));
      }
      const thresholds = chooseThresholds(measure, diagnosis, {
        thresholds: thresholdId === null ? {} : { [measureId]: thresholdId },
        thresholdsByDiagnosis: {},
      });
      const change = subtract(ends.discharge, ends.baseline);
      const improvement = measure.betterWhen === 'higher' ? change : negate(change);
      const used = measure.thresholds.find((each) => each.id === thresholds.improvement?.thresholdId);
      return reply.send({
        measureId,
        change: toNumber(change),
        improvement: toNumber(improvement),
        class: classify(improvement, thresholds),
        isExactlyAtThreshold:
          thresholds.improvement === null ? null : compare(improvement, thresholds.improvement.value) === 0,
        thresholdId: thresholds.improvement?.thresholdId ?? null,
        thresholdValue: thresholds.improvement === null ? null : toNumber(thresholds.improvement.value),
        amountsTo: used === undefined ? null : smallestChangeReaching(measure, used).words,
        populationNote: thresholds.improvement?.populationNote ?? null,
        source: used === undefined ? null : presentCitation(used.citation),
      });
    },
  );
}

const NO_PREDICTION = {
  predicted: null,
  lowerLimit: null,
  beyondAgesStudied: false,
  ceilingNote: null,
  percentPredicted: null,
  isBelowLowerLimit: null,
  caution: PREDICTION_CAUTION,
};

const NO_SCORE = { value: null, answeredItems: null, ofItems: null, notScoredReason: null };

type Ends =
  | { readonly kind: 'read'; readonly baseline: Fraction; readonly discharge: Fraction }
  | { readonly kind: 'faulty'; readonly faults: readonly Fault[] };

function readEnds(measure: Measure, typed: { readonly baseline: number; readonly discharge: number }): Ends {
  const baseline = readTypedScore(measure, typed.baseline);
  const discharge = readTypedScore(measure, typed.discharge);
  if (baseline.kind === 'read' && discharge.kind === 'read') {
    return { kind: 'read', baseline: baseline.value, discharge: discharge.value };
  }
  const faults = [
    { pointer: '/baseline', read: baseline },
    { pointer: '/discharge', read: discharge },
  ].flatMap(({ pointer, read }) =>
    read.kind === 'refused' ? [{ pointer, code: read.fault, message: read.message }] : [],
  );
  return { kind: 'faulty', faults };
}

function isUsable(measure: Measure, thresholdId: string): boolean {
  return measure.thresholds.some(
    (each) => each.id === thresholdId && each.purpose === 'improvement' && each.value !== null,
  );
}
