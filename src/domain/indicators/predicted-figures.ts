import type { ResultAt } from '../change/pair.js';
import { predictedAt } from '../change/predicted-at.js';
import type { PredictedAt } from '../change/predicted-at.js';
import type { Measure } from '../measures/measure.js';
import type { Course } from '../pathway/course.js';
import { findEquation } from '../prediction/catalogue.js';
import type { PredictionEquation } from '../prediction/prediction-equation.js';
import type { TeamSettings } from '../settings/team-settings.js';
import type { FigureRule } from './indicator.js';
import { countsIf, countsNot } from './judge.js';
import { pairRule } from './pair-figures.js';

/** What became of a like-for-like pair when it was set beside its predictions; the first three add up to all pairs. */
export const PREDICTED_PARTS = {
  counted: 'predicted at both ends, within the ages studied',
  'beyond-ages': 'an end beyond the ages studied',
  'not-predicted': 'an end without a prediction',
  'below-limit-baseline': 'below the lower limit of normal at baseline',
  'below-limit-discharge': 'below the lower limit of normal at discharge',
} as const satisfies Readonly<Record<string, string>>;

export type PredictedPart = keyof typeof PREDICTED_PARTS;

/** A pair of results beside the predictions of an equation. */
export type PredictedPair =
  | { readonly kind: 'not-predicted'; readonly reason: string }
  | {
      readonly kind: 'beyond-ages' | 'counted';
      readonly baseline: PredictedAt;
      readonly discharge: PredictedAt;
    };

/** Both ends of a pair of somebody. */
export interface EndsOfPair {
  readonly course: Course;
  readonly baseline: ResultAt;
  readonly discharge: ResultAt;
}

/** The equation that a team has chosen for a measure; null where there is none. */
export function equationFor({ id }: Measure, settings: TeamSettings): PredictionEquation | null {
  const equationId = settings.equations[id];
  const equation = equationId === undefined ? null : findEquation(equationId);
  return equation?.measureId === id ? equation : null;
}

/** Sets both ends of a pair beside their predictions. */
export function predictedPair(
  equation: PredictionEquation,
  { course, baseline, discharge }: EndsOfPair,
): PredictedPair {
  const before = predictedAt(equation, baseline, course.facts);
  const after = predictedAt(equation, discharge, course.facts);
  const reason = absenceOf(before) ?? absenceOf(after);
  if (reason !== null) return { kind: 'not-predicted', reason };
  const kind = isBeyondAges(before) || isBeyondAges(after) ? 'beyond-ages' : 'counted';
  return { kind, baseline: before, discharge: after };
}

/** @example predictedFigureId('six-minute-walk-distance', 'counted') -> 'predicted.counted.six-minute-walk-distance' */
export function predictedFigureId(measureId: string, part: PredictedPart): string {
  return `predicted.${part}.${measureId}`;
}

/** The figure behind a number of the section on percentage predicted. */
export function predictedRule(measure: Measure, part: PredictedPart): FigureRule {
  return pairRule(measure, {
    id: predictedFigureId(measure.id, part),
    ruleId: 'predicted-pairs@1',
    title: PREDICTED_PARTS[part],
    numerator: `By the equation that the team has chosen: ${PREDICTED_PARTS[part]}`,
    of: 'like-for-like',
    judge: (asked, settings) => {
      const equation = equationFor(measure, settings);
      if (equation === null) return countsNot('The team has chosen no equation');
      const predicted = predictedPair(equation, asked);
      const words = wordsOf(predicted);
      return countsIf(isPart(predicted, part), words, words);
    },
  });
}

function isPart(predicted: PredictedPair, part: PredictedPart): boolean {
  if (predicted.kind !== 'counted') return predicted.kind === part;
  switch (part) {
    case 'counted':
      return true;
    case 'below-limit-baseline':
      return predicted.baseline.isBelowLowerLimit === true;
    case 'below-limit-discharge':
      return predicted.discharge.isBelowLowerLimit === true;
    case 'beyond-ages':
    case 'not-predicted':
      return false;
  }
}

function wordsOf(predicted: PredictedPair): string {
  if (predicted.kind === 'not-predicted') return predicted.reason;
  const percent = ({ percent: value, isBelowLowerLimit }: PredictedAt): string =>
    `${(value ?? 0).toFixed(1)} %${isBelowLowerLimit === true ? ' (below the lower limit)' : ''}`;
  const ends = `${percent(predicted.baseline)} of predicted at baseline, ${percent(predicted.discharge)} at discharge`;
  return predicted.kind === 'beyond-ages' ? `Beyond the ages studied: ${ends}` : ends;
}

function absenceOf({ prediction }: PredictedAt): string | null {
  return prediction.kind === 'not-predicted' ? prediction.words : null;
}

function isBeyondAges({ prediction }: PredictedAt): boolean {
  return prediction.kind === 'predicted' && prediction.beyondAgesStudied;
}
