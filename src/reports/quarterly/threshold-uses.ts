import type { Comparison } from '../../domain/change/change.js';
import type { ChosenThreshold } from '../../domain/change/choose-threshold.js';
import type { ResultAt } from '../../domain/change/pair.js';
import { toNumber } from '../../domain/exact/fraction.js';
import { smallestChangeReaching } from '../../domain/measures/grid.js';
import type { Measure } from '../../domain/measures/measure.js';
import type { Course } from '../../domain/pathway/course.js';
import type { ThresholdUse } from './definitions-model.js';
import { sourceOf } from './source.js';

/** A pair of results of one measure, judged. */
export interface JudgedPair {
  readonly course: Course;
  readonly baseline: ResultAt;
  readonly discharge: ResultAt;
  readonly comparison: Extract<Comparison, { kind: 'pair' }>;
}

/** Which thresholds judged the pairs of a measure, and how many of them. */
export function thresholdUses(measure: Measure, pairs: readonly JudgedPair[]): readonly ThresholdUse[] {
  const uses = new Map<
    string,
    { chosen: ChosenThreshold; purpose: ThresholdUse['purpose']; pairs: number; others: number }
  >();
  for (const { comparison } of pairs) {
    for (const purpose of ['improvement', 'deterioration'] as const) {
      const chosen = comparison.thresholds[purpose];
      if (chosen === null) continue;
      const key = `${chosen.thresholdId}/${chosen.chosenBy}`;
      const use = uses.get(key) ?? { chosen, purpose, pairs: 0, others: 0 };
      use.pairs += 1;
      if (chosen.populationNote !== null) use.others += 1;
      uses.set(key, use);
    }
  }
  return [...uses.values()].map((use) => thresholdUse(measure, use));
}

function thresholdUse(
  measure: Measure,
  use: { chosen: ChosenThreshold; purpose: ThresholdUse['purpose']; pairs: number; others: number },
): ThresholdUse {
  const { chosen, purpose, pairs, others } = use;
  const threshold = measure.thresholds.find((each) => each.id === chosen.thresholdId);
  if (threshold === undefined) throw new RangeError(`${measure.id} has no threshold ${chosen.thresholdId}.`);
  return {
    thresholdId: chosen.thresholdId,
    purpose,
    value: toNumber(chosen.value),
    unit: measure.unit,
    amountsTo: smallestChangeReaching(measure, threshold).words,
    population: chosen.population,
    chosenBy: chosen.chosenBy,
    pairs,
    pairsOfAnotherDiagnosis: others,
    source: sourceOf(chosen.citation),
  };
}
