import { classify } from '../../domain/change/change.js';
import type { ChosenThreshold } from '../../domain/change/choose-threshold.js';
import { chooseThresholds } from '../../domain/change/choose-threshold.js';
import { compare, negate, subtract, toNumber } from '../../domain/exact/fraction.js';
import type { Fraction } from '../../domain/exact/fraction.js';
import { findMeasure, findThreshold, questionnaireOf } from '../../domain/measures/catalogue.js';
import { formsOf, readFormScore } from '../../domain/measures/form-score.js';
import { smallestChangeReaching } from '../../domain/measures/grid.js';
import type { Measure } from '../../domain/measures/measure.js';
import { readTypedScore } from '../../domain/measures/typed-score.js';
import type { Fault } from '../../domain/refusal/refusal.js';
import type { App } from '../app-types.js';
import { presentCitation } from '../catalogue/citation-schema.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { ChangeCalculated, ChangeCalculation } from './calculation-schema.js';

/** The route that judges a change by its thresholds. */
export function changeCalculation(app: App): void {
  app.post(
    '/calculations/change',
    {
      schema: {
        operationId: 'calculateChange',
        summary: 'Judge a change against the minimal important difference',
        tags: ['calculations'],
        body: ChangeCalculation,
        response: { 200: ChangeCalculated, ...problemResponses(400, 401, 404, 413, 415, 422) },
      },
    },
    async (request, reply) => {
      const { measureId, diagnosis, thresholdId, form, ...typed } = request.body;
      const measure = findMeasure(measureId);
      if (measure === undefined) {
        return sendProblem(reply, problemFor({ code: 'not-found', what: 'measure' }));
      }
      const ends = readEnds(measure, form, typed);
      const faults = [
        ...(ends.kind === 'faulty' ? ends.faults : []),
        ...thresholdFaults(measure, thresholdId),
      ];
      if (ends.kind === 'faulty' || faults.length > 0) {
        return sendProblem(reply, problemFor({ code: 'rules-broken', faults }));
      }
      const thresholds = chooseThresholds(measure, diagnosis, {
        thresholds: thresholdId === null ? {} : { [measureId]: thresholdId },
        thresholdsByDiagnosis: {},
      });
      const change = subtract(ends.discharge, ends.baseline);
      const improvement = measure.betterWhen === 'higher' ? change : negate(change);
      const threshold = presentThreshold(measure, thresholds.improvement);
      return reply.send({
        measureId,
        change: toNumber(change),
        improvement: toNumber(improvement),
        class: classify(improvement, thresholds),
        isExactlyAtThreshold:
          thresholds.improvement === null ? null : compare(improvement, thresholds.improvement.value) === 0,
        thresholdId: threshold?.thresholdId ?? null,
        thresholdValue: threshold?.thresholdValue ?? null,
        amountsTo: threshold?.amountsTo ?? null,
        populationNote: threshold?.populationNote ?? null,
        source: threshold?.source ?? null,
        worsening: presentThreshold(measure, thresholds.deterioration),
      });
    },
  );
}

function presentThreshold(measure: Measure, chosen: ChosenThreshold | null) {
  const threshold = chosen === null ? undefined : findThreshold(chosen.thresholdId);
  if (chosen === null || threshold === undefined) return null;
  return {
    thresholdId: chosen.thresholdId,
    thresholdValue: toNumber(chosen.value),
    amountsTo: smallestChangeReaching(measure, threshold).words,
    populationNote: chosen.populationNote,
    source: presentCitation(chosen.citation),
  };
}

type Ends =
  | { readonly kind: 'read'; readonly baseline: Fraction; readonly discharge: Fraction }
  | { readonly kind: 'faulty'; readonly faults: readonly Fault[] };

/** Reads both ends as an assessment would: on the one form that is named, where the score needs one. */
function readEnds(
  measure: Measure,
  form: string | null,
  typed: { readonly baseline: number; readonly discharge: number },
): Ends {
  const questionnaire = questionnaireOf(measure.id);
  const forms = questionnaire === undefined ? [] : formsOf(questionnaire, measure.id);
  const isKnown = form === null ? forms.length === 0 : questionnaire?.forms.includes(form) === true;
  if (!isKnown) return { kind: 'faulty', faults: [formFault(measure, forms, form)] };
  const read = (value: number) =>
    questionnaire === undefined
      ? readTypedScore(measure, value)
      : readFormScore(questionnaire, measure, value, form);
  const [baseline, discharge] = [read(typed.baseline), read(typed.discharge)];
  if (baseline.kind === 'read' && discharge.kind === 'read') {
    return { kind: 'read', baseline: baseline.value, discharge: discharge.value };
  }
  const faults = [
    { pointer: '/baseline', end: baseline },
    { pointer: '/discharge', end: discharge },
  ].flatMap(({ pointer, end }) =>
    end.kind === 'refused' ? [{ pointer, code: end.fault, message: end.message }] : [],
  );
  return { kind: 'faulty', faults };
}

function formFault(measure: Measure, forms: readonly string[], form: string | null): Fault {
  const message =
    forms.length === 0
      ? `${measure.name} has one form only: leave the form out.`
      : `Name the form of ${measure.name}, the same at both ends: ${forms.join(', ')}.`;
  return { pointer: '/form', code: form === null ? 'form-missing' : 'unknown-form', message };
}

function thresholdFaults(measure: Measure, thresholdId: string | null): readonly Fault[] {
  const isUsable = measure.thresholds.some(
    (each) => each.id === thresholdId && each.purpose === 'improvement' && each.value !== null,
  );
  if (thresholdId === null || isUsable) return [];
  const message = 'The measure has no threshold of this id that can judge an improvement.';
  return [{ pointer: '/thresholdId', code: 'unknown-threshold', message }];
}
