import { findMeasure } from '../../domain/measures/catalogue.js';
import { readTypedScore } from '../../domain/measures/typed-score.js';
import { findEquation } from '../../domain/prediction/catalogue.js';
import type { NoPredictionReason } from '../../domain/prediction/known-inputs.js';
import {
  isBelowLowerLimit,
  percentPredicted,
  PREDICTION_CAUTION,
  predictResult,
} from '../../domain/prediction/predict.js';
import type { PredictionEquation } from '../../domain/prediction/prediction-equation.js';
import type { Fault } from '../../domain/refusal/refusal.js';
import type { App } from '../app-types.js';
import { presentCitation } from '../catalogue/citation-schema.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { PredictionCalculated, PredictionCalculation } from './calculation-schema.js';

/** The route that predicts a result by one equation. */
export function predictionCalculation(app: App): void {
  app.post(
    '/calculations/prediction',
    {
      schema: {
        operationId: 'calculatePrediction',
        summary: 'Predict a result by one equation',
        description:
          'What the equation needs and was not given leaves no prediction, with the reason; a value that is none is refused.',
        tags: ['calculations'],
        body: PredictionCalculation,
        response: { 200: PredictionCalculated, ...problemResponses(400, 401, 404, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { equationId, value, ...person } = request.body;
      const equation = findEquation(equationId);
      if (equation === null) return sendProblem(reply, problemFor({ code: 'not-found', what: 'equation' }));
      const prediction = predictResult(equation, person);
      const faults = value === null ? [] : [...resultFaults(equation, value)];
      if (prediction.kind === 'not-predicted') {
        const pointer = POINTERS[prediction.reason];
        if (pointer !== null) faults.unshift({ pointer, code: prediction.reason, message: prediction.words });
      }
      if (faults.length > 0) return sendProblem(reply, problemFor({ code: 'rules-broken', faults }));
      const source = presentCitation(equation.citation);
      if (prediction.kind === 'not-predicted') {
        return reply.send({ ...NO_PREDICTION, equationId, notPredictedReason: prediction.words, source });
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
        source,
        caution: PREDICTION_CAUTION,
      });
    },
  );
}

const NO_PREDICTION = {
  predicted: null,
  lowerLimit: null,
  beyondAgesStudied: null,
  ceilingNote: null,
  percentPredicted: null,
  isBelowLowerLimit: null,
  caution: PREDICTION_CAUTION,
};

/** Where the value stands that is none; null where nothing wrong was given and the answer is that there is no prediction. */
const POINTERS: Readonly<Record<NoPredictionReason, string | null>> = {
  'sex-not-known': null,
  'age-missing': null,
  'age-not-accepted': '/ageYears',
  'height-missing': null,
  'height-not-accepted': '/heightCm',
  'weight-missing': null,
  'weight-not-accepted': '/weightKg',
  'peak-heart-rate-missing': null,
  'peak-heart-rate-not-accepted': '/peakHeartRatePercent',
  'activity-missing': null,
  'no-positive-value': null,
};

function resultFaults(equation: PredictionEquation, value: number): readonly Fault[] {
  const measure = findMeasure(equation.measureId);
  if (measure === undefined) return [];
  const read = readTypedScore(measure, value);
  return read.kind === 'read' ? [] : [{ pointer: '/value', code: read.fault, message: read.message }];
}
