import { conditionsKnown } from '../change/conditions.js';
import { PAIR_LOSS_REASONS } from '../change/pair-loss.js';
import { MEASURES } from '../measures/catalogue.js';
import type { Measure } from '../measures/measure.js';
import type { FigureRule } from './indicator.js';
import {
  atCeilingRule,
  atHomeRule,
  changeClassRule,
  differsByRule,
  pairLostRule,
  practiceWalkDiffersRule,
  withBaselineRule,
} from './pair-figures.js';
import { PREDICTED_PARTS, predictedRule } from './predicted-figures.js';
import type { PredictedPart } from './predicted-figures.js';
import { thresholdRules } from './threshold-figures.js';

/**
 * The figures behind the plain numbers of a measure, which a report counts by other means: they are made when one is
 * opened.
 */
export function detailRules(measure: Measure): readonly FigureRule[] {
  const parts = Object.keys(PREDICTED_PARTS).filter((part): part is PredictedPart => part in PREDICTED_PARTS);
  return [
    withBaselineRule(measure),
    ...PAIR_LOSS_REASONS.map((reason) => pairLostRule(measure, reason)),
    ...conditionsKnown().map((condition) => differsByRule(measure, condition)),
    atHomeRule(measure),
    atCeilingRule(measure),
    practiceWalkDiffersRule(measure),
    ...parts.map((part) => predictedRule(measure, part)),
    ...thresholdRules(measure),
  ];
}

/** The rule behind such a number by the id of its figure; undefined where there is none. */
export function findDetailRule(figureId: string): FigureRule | undefined {
  return details().get(figureId) ?? findChangeClass(figureId);
}

let known: ReadonlyMap<string, FigureRule> | null = null;

function details(): ReadonlyMap<string, FigureRule> {
  known ??= new Map(MEASURES.flatMap(detailRules).map((rule) => [rule.id, rule]));
  return known;
}

/** @example 'change-class.crq-dyspnoea.0.5.-3' */
const CHANGE_CLASS = /^change-class\.([a-z0-9-]+)\.(\d{1,6}(?:\.\d{1,4})?)\.(-?\d{1,6})$/;

function findChangeClass(figureId: string): FigureRule | undefined {
  const [, measureId, width, index] = CHANGE_CLASS.exec(figureId) ?? [];
  const measure = MEASURES.find(({ id }) => id === measureId);
  if (measure === undefined || !(Number(width) > 0)) return undefined;
  const rule = changeClassRule(measure, Number(width), Number(index));
  return rule.id === figureId ? rule : undefined;
}
