import type { Result } from '../cohort/referral-facts.js';
import type { Fraction } from '../exact/fraction.js';
import { compare, negate, subtract, toNumber } from '../exact/fraction.js';
import { findMeasure } from '../measures/catalogue.js';
import { show } from '../measures/accepted-values.js';
import { withUnit } from '../measures/shown-value.js';
import type { ChosenThresholds } from './choose-threshold.js';
import { differencesOf, makesAnotherMeasurement } from './conditions.js';
import type { ConditionDifference } from './conditions.js';

/** `change-only`: the measure has no threshold, so the change is shown and not judged. */
export type ChangeClass = 'improved' | 'little-change' | 'worse' | 'change-only';

/** What became of one measure between baseline and discharge. */
export type Comparison =
  | {
      readonly kind: 'pair';
      readonly measureId: string;
      /** Discharge minus baseline, exact, in the unit of the measure. */
      readonly change: Fraction;
      /** The change with its sign turned where lower is better: positive is always better. */
      readonly improvement: Fraction;
      readonly class: ChangeClass;
      readonly isLikeForLike: boolean;
      /** What keeps the pair from being like for like; empty where nothing does. */
      readonly differences: readonly ConditionDifference[];
      /** Which end was at the ceiling of the test, so that the true change is not known. */
      readonly ceiling: 'none' | 'baseline' | 'discharge' | 'both';
      /** One end had a practice walk and the other had not; a mark, no difference in conditions. */
      readonly practiceWalkDiffers: boolean;
      readonly thresholds: ChosenThresholds;
      /** The change for readers, such as `Better by 50 m, threshold 47.5 m`. */
      readonly words: string;
      /** The differences for readers; empty where nothing differs. */
      readonly differenceWords: string;
    }
  | {
      readonly kind: 'no-pair';
      readonly measureId: string;
      readonly reason: NoPairReason;
      readonly words: string;
    };

export type NoPairReason =
  'no-baseline-result' | 'no-discharge-result' | 'not-comparable' | 'compared-on-other-scale';

/**
 * Compares the two results of one measure.
 *
 * Equality achieves: a change that equals the threshold is `improved`, and one that equals it in the other direction is
 * `worse`. All arithmetic is exact. Another test, questionnaire or speed of the endurance walk leaves no pair; any
 * other difference keeps the pair and is named.
 *
 * @param baseline result of a measure
 * @param discharge result of the same measure
 * @param thresholds what judges the change for this person's diagnosis
 * @throws RangeError when the results and the thresholds are not of one measure
 * @example compareResults(CAT 20, CAT 18, 2 points) -> change -2, improvement 2, improved
 */
export function compareResults(
  baseline: Result,
  discharge: Result,
  thresholds: ChosenThresholds,
): Comparison {
  const { measureId } = baseline;
  if (discharge.measureId !== measureId || thresholds.measureId !== measureId) {
    throw new RangeError('A change is had between two results of one measure.');
  }
  const differences = differencesOf(baseline.conditions, discharge.conditions);
  const forbidding = differences.filter(makesAnotherMeasurement);
  if (forbidding.length > 0) {
    return {
      kind: 'no-pair',
      measureId,
      reason: 'not-comparable',
      words: `Not comparable: ${wordsOf(forbidding)}`,
    };
  }
  const change = subtract(discharge.value, baseline.value);
  const improvement = thresholds.betterWhen === 'higher' ? change : negate(change);
  return {
    kind: 'pair',
    measureId,
    change,
    improvement,
    class: classify(improvement, thresholds),
    isLikeForLike: differences.length === 0,
    differences,
    ceiling: ceilingOf(baseline, discharge),
    practiceWalkDiffers:
      baseline.hadPracticeWalk !== null &&
      discharge.hadPracticeWalk !== null &&
      baseline.hadPracticeWalk !== discharge.hadPracticeWalk,
    thresholds,
    words: changeInWords(improvement, thresholds),
    differenceWords: wordsOf(differences),
  };
}

/**
 * Judges an improvement by its thresholds.
 *
 * @param improvement positive is better, in the unit of the measure
 * @returns `worse` at or beyond the threshold for getting worse where one was published, else the improvement value
 * @example classify(47.5 m, threshold 47.5 m) -> 'improved'
 */
export function classify(
  improvement: Fraction,
  thresholds: Pick<ChosenThresholds, 'improvement' | 'deterioration'>,
): ChangeClass {
  if (thresholds.improvement === null) return 'change-only';
  if (compare(improvement, thresholds.improvement.value) >= 0) return 'improved';
  const fall = thresholds.deterioration ?? thresholds.improvement;
  return compare(negate(improvement), fall.value) >= 0 ? 'worse' : 'little-change';
}

/** One text for all changes of one size that one choice judges: a long report holds each some hundred times. */
const wordsKnown = new WeakMap<ChosenThresholds, Map<number, string>>();

function changeInWords(improvement: Fraction, thresholds: ChosenThresholds): string {
  const known = wordsKnown.get(thresholds) ?? new Map<number, string>();
  wordsKnown.set(thresholds, known);
  const size = toNumber(improvement);
  const words = known.get(size) ?? wordsFor(improvement, thresholds);
  known.set(size, words);
  return words;
}

function wordsFor(improvement: Fraction, { measureId, improvement: threshold }: ChosenThresholds): string {
  const unit = findMeasure(measureId)?.unit ?? 'points';
  const size = (value: Fraction) => withUnit(show(value), unit);
  const judgedBy = threshold === null ? '' : `, threshold ${size(threshold.value)}`;
  if (improvement.numerator === 0) return `No change${judgedBy}`;
  const isBetter = improvement.numerator > 0;
  return `${isBetter ? 'Better' : 'Worse'} by ${size(isBetter ? improvement : negate(improvement))}${judgedBy}`;
}

function wordsOf(differences: readonly ConditionDifference[]): string {
  return differences.map((each) => each.words).join('; ');
}

function ceilingOf(baseline: Result, discharge: Result): 'none' | 'baseline' | 'discharge' | 'both' {
  if (baseline.isCeiling && discharge.isCeiling) return 'both';
  if (baseline.isCeiling) return 'baseline';
  return discharge.isCeiling ? 'discharge' : 'none';
}
