import { findMeasure, findThreshold } from '../../domain/measures/catalogue.js';
import { toNumber } from '../../domain/exact/fraction.js';
import type { Unit } from '../../domain/measures/measure.js';
import { equationName } from '../../domain/prediction/equation-name.js';
import { changeWords, shownChange, withUnit } from '../../domain/measures/shown-value.js';
import type { EndResult, MeasureOutcome, ThresholdUsed } from '../../reports/outcomes/outcomes-model.js';
import { UNIT_SPACE } from '../../domain/text/unit-space.js';

const MINUS = '\u2212';
const MOST_PLACES = 3;

/** A value as it is read: no more places than it has, and never more than three. @example plain(3.4285714) -> '3.429' */
export function plain(value: number): string {
  const text = String(Number(value.toFixed(MOST_PLACES)));
  return text.replace('-', MINUS);
}

/** A change with its sign and without its unit; nothing where there is no pair. @example '+60' */
export function signedChange(measure: MeasureOutcome): string {
  const { change, unit } = measure;
  return change === null ? '' : shownChange(change, unit, thresholdsOf(measure));
}

/** A change with its sign and unit; nothing where there is no pair. @example '+60 m', '−1 grade', 'no change' */
export function changeInWords(measure: MeasureOutcome): string {
  const { change, unit } = measure;
  return change === null ? '' : changeWords(change, unit, thresholdsOf(measure));
}

function thresholdsOf({ improvementThreshold, worseningThreshold }: MeasureOutcome): readonly number[] {
  return [improvementThreshold, worseningThreshold].flatMap((used) => used?.value ?? []);
}

const UNIT_WORDS: Readonly<Record<Unit, string>> = {
  m: 'metres',
  s: 'seconds',
  repetitions: 'repetitions',
  'm/s': 'metres a second',
  points: 'points',
  'mean item score': 'mean of the items',
  grade: 'grades',
  utility: 'index',
  kg: 'kg',
  kgf: 'kgf',
  'N.m': 'N\u00b7m',
};

/** Scores, of which the ends of the scale are said. */
const SCALES: readonly Unit[] = ['points', 'mean item score', 'grade'];

/** What the numbers of a measure are, and which way is better. @example 'grades 1 to 5, lower is better'; 'metres, higher is better' */
export function scaleWords(measureId: string): string {
  const measure = findMeasure(measureId);
  if (measure === undefined) return '';
  const { unit, betterWhen, range } = measure;
  const ends = SCALES.includes(unit) ? ` ${plain(toNumber(range.min))} to ${plain(toNumber(range.max))}` : '';
  return `${UNIT_WORDS[unit]}${ends}, ${betterWhen} is better`;
}

/** What became of a measure, in words. */
export function classWords({ class: kind, noPairReason }: MeasureOutcome): string {
  if (noPairReason !== null) return noPairReason;
  switch (kind) {
    case 'improved':
      return 'improved by the MID or more';
    case 'worse':
      return 'worse by the MID or more';
    case 'little-change':
      return 'less than the MID either way';
    case 'change-only':
      return 'not judged: no MID is known';
    case null:
      return '';
  }
}

/** The MID that judged a change, with the interval its source prints. @example '48 m (35 to 61), COPD' */
export function thresholdWords(used: ThresholdUsed | null, unit: string): string {
  if (used === null) return 'none';
  const interval = findThreshold(used.thresholdId)?.interval ?? null;
  const range =
    interval === null ? '' : ` (${plain(toNumber(interval.low))} to ${plain(toNumber(interval.high))})`;
  return `${withUnit(plain(used.value), unit)}${range}, ${inSentence(used.population)}`;
}

/** As it stands within a sentence; an abbreviation keeps its capitals. @example inSentence('Chronic disease') -> 'chronic disease' */
function inSentence(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** The improvement as a multiple of the MID, better being positive; null where there is no pair or no MID. */
export function timesMid({ improvement, improvementThreshold }: MeasureOutcome): number | null {
  return improvement === null || improvementThreshold === null
    ? null
    : improvement / improvementThreshold.value;
}

/** A result as a share of what is predicted, in words; null where no equation was chosen. */
export function predictedWords({ predicted }: EndResult): string | null {
  if (predicted === null) return null;
  const { percentPredicted, equationId, notPredictedReason } = predicted;
  if (percentPredicted === null) return `Not predicted. ${notPredictedReason ?? ''}`;
  return `${Math.round(percentPredicted)}${UNIT_SPACE}% predicted (${equationName(equationId)})`;
}

/** The marks that stand beside a comparison. */
export function marksOf(measure: MeasureOutcome): readonly string[] {
  const { isLikeForLike, differences, baseline, discharge, improvementThreshold } = measure;
  const ends = [baseline, discharge].filter((end) => end !== null);
  return [
    ...(isLikeForLike === false ? [`conditions differ: ${differences.join('; ')}`] : []),
    ...(ends.some(({ hadPracticeWalk }) => hadPracticeWalk === false) ? ['no practice walk'] : []),
    ...(ends.some(({ isCeiling }) => isCeiling) ? ['at the ceiling of the test'] : []),
    ...(improvementThreshold?.mark === null || improvementThreshold === null
      ? []
      : [`MID: ${improvementThreshold.mark}`]),
  ];
}
