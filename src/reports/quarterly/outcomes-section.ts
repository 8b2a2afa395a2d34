import type { CourseChange } from '../../domain/change/course-changes.js';
import { conditionName } from '../../domain/change/conditions.js';
import { toNumber } from '../../domain/exact/fraction.js';
import type { Figure } from '../../domain/indicators/figure.js';
import { outcomeFigures } from '../../domain/indicators/outcome-figures.js';
import type { ClassFigures } from '../../domain/indicators/outcome-figures.js';
import { MEASURES } from '../../domain/measures/catalogue.js';
import { PAIR_FIGURE_IDS } from '../../domain/indicators/pair-figures.js';
import type { Measure } from '../../domain/measures/measure.js';
import { pairedChange } from '../../domain/statistics/paired-change.js';
import { responderBounds } from '../../domain/statistics/responders.js';
import { summarise } from '../../domain/statistics/summary.js';
import type { FigureCounter } from './figure-counter.js';
import type { Quarter } from './quarter.js';
import { distributionOf } from './distribution.js';
import { midOf } from './document/mid.js';
import type { MeasureOutcomes, PairsOutcome, PairsSummary, Responders } from './report-model.js';
import { thresholdUses } from './threshold-uses.js';
import type { JudgedPair } from './threshold-uses.js';

/** A measure with what every starter of the discharge cohort had of it, in the order of the cohort. */
export interface MeasuredStarters {
  readonly measure: Measure;
  readonly changes: readonly CourseChange[];
  readonly pairs: readonly JudgedPair[];
}

/** What was measured of the starters of the discharge cohort, by measure in the order of the catalogue; one pass. */
export function measuredStarters({ cohorts, context }: Quarter): readonly MeasuredStarters[] {
  const byMeasure = new Map<string, { changes: CourseChange[]; pairs: JudgedPair[] }>();
  for (const course of cohorts.discharge.courses) {
    if (course.isRegisteredInError || course.startedOn === null) continue;
    for (const change of context.changesOf(course).values()) {
      const found = byMeasure.get(change.measureId) ?? { changes: [], pairs: [] };
      byMeasure.set(change.measureId, found);
      found.changes.push(change);
      const { baseline, discharge, comparison } = change;
      if (comparison.kind === 'pair' && baseline !== null && discharge !== null) {
        found.pairs.push({ course, baseline, discharge, comparison });
      }
    }
  }
  return MEASURES.flatMap((measure) => {
    const found = byMeasure.get(measure.id);
    return found === undefined ? [] : [{ measure, ...found }];
  });
}

/** Outcomes of every measure that a starter of the discharge cohort has at either end. */
export function outcomesSection(
  measured: readonly MeasuredStarters[],
  counter: FigureCounter,
): readonly MeasureOutcomes[] {
  return measured.map((starters) => measureOutcomes(starters, counter));
}

function measureOutcomes(
  { measure, changes, pairs }: MeasuredStarters,
  { count }: FigureCounter,
): MeasureOutcomes {
  const figures = outcomeFigures(measure);
  const hasDefault = measure.thresholds.some((each) => each.isDefault && each.purpose === 'improvement');
  const isJudged = hasDefault || pairs.some(({ comparison }) => comparison.class !== 'change-only');
  const classes = (rules: ClassFigures): Pick<PairsOutcome, 'midReached' | 'littleChange' | 'worse'> =>
    isJudged
      ? {
          midReached: count(rules.midReached),
          littleChange: count(rules.littleChange),
          worse: count(rules.worse),
        }
      : { midReached: null, littleChange: null, worse: null };
  const strict = pairs.filter(({ comparison }) => comparison.isLikeForLike);
  const likeForLike = { ...pairsOutcome(strict), ...classes(figures.likeForLike) };
  const asksForPractice = changes.some((change) =>
    [change.baseline, change.discharge].some((end) => (end?.result.hadPracticeWalk ?? null) !== null),
  );
  const thresholds = thresholdUses(measure, pairs);
  return {
    measureId: measure.id,
    name: measure.name,
    shortName: measure.shortName,
    unit: measure.unit,
    betterWhen: measure.betterWhen,
    pairsOverStarters: count(figures.pairs),
    likeForLikePairsOverStarters: count(figures.likeForLikePairs),
    likeForLike,
    allPairs: { ...pairsOutcome(pairs), ...classes(figures.allPairs) },
    atHome: atHomeOf(strict),
    distribution: distributionOf(
      strict.map(({ comparison }) => comparison.change),
      { measureId: measure.id, betterWhen: measure.betterWhen, mid: midOf({ thresholds }) },
    ),
    differences: differencesOf(measure.id, pairs),
    practiceWalk: asksForPractice
      ? { baseline: count(figures.practiceWalk.baseline), discharge: count(figures.practiceWalk.discharge) }
      : null,
    practiceWalkDiffers: asksForPractice
      ? pairs.filter(({ comparison }) => comparison.practiceWalkDiffers).length
      : null,
    pairsAtCeiling: pairs.filter(({ comparison }) => comparison.ceiling !== 'none').length,
    responders: likeForLike.midReached === null ? null : respondersOf(likeForLike.midReached, changes),
    thresholds,
    marks: [...new Set(thresholds.flatMap(({ source }) => source.mark ?? []))],
  };
}

/** Tests done at a person's home are another course and another floor: they stand apart as well as in the whole. */
function atHomeOf(strict: readonly JudgedPair[]): PairsSummary | null {
  const atHome = strict.filter(({ baseline }) => baseline.result.conditions['place'] === 'home');
  return atHome.length === 0 ? null : pairsOutcome(atHome);
}

function pairsOutcome(pairs: readonly JudgedPair[]): PairsSummary {
  const changes = pairs.map(({ comparison }) => toNumber(comparison.change));
  return {
    pairs: pairs.length,
    baseline: summarise(pairs.map(({ baseline }) => toNumber(baseline.result.value))),
    discharge: summarise(pairs.map(({ discharge }) => toNumber(discharge.result.value))),
    change: pairedChange(changes),
    changeSummary: summarise(changes),
  };
}

/** A starter without a baseline result of this measure was never to be measured again by it. */
function respondersOf(midReached: Figure, changes: readonly CourseChange[]): Responders {
  const eligible = changes.filter((change) => change.baseline !== null).length;
  const { numerator: achieved, denominator: measured } = midReached;
  const bounds = responderBounds({ achieved, measured, eligible });
  const percent = (share: number | null): number | null => (share === null ? null : 100 * share);
  return {
    achieved,
    measured,
    eligible,
    worst: percent(bounds.worst),
    best: percent(bounds.best),
    measuredShare: percent(bounds.measuredShare),
    fewMeasured: bounds.fewMeasured,
  };
}

function differencesOf(measureId: string, pairs: readonly JudgedPair[]): MeasureOutcomes['differences'] {
  const counts = new Map<string, number>();
  for (const { comparison } of pairs) {
    for (const { condition } of comparison.differences) {
      counts.set(condition, (counts.get(condition) ?? 0) + 1);
    }
  }
  return [...counts].map(([condition, count]) => ({
    condition,
    name: conditionName(condition),
    figureId: PAIR_FIGURE_IDS.differsBy(measureId, condition),
    pairs: count,
  }));
}
