import type { Comparison } from '../change/change.js';
import { classIndexOf, endsOfClass } from '../change/change-classes.js';
import { conditionName } from '../change/conditions.js';
import type { ResultAt } from '../change/pair.js';
import { pairLossOf, PAIR_LOSS_WORDS } from '../change/pair-loss.js';
import type { PairLossReason } from '../change/pair-loss.js';
import type { Measure } from '../measures/measure.js';
import type { Course } from '../pathway/course.js';
import type { TeamSettings } from '../settings/team-settings.js';
import type { FigureRule, Judgement } from './indicator.js';
import { counts, countsIf, countsNot, leftOut } from './judge.js';
import { OWN_RULE } from './sources.js';

/*
 * What stands beside the outcomes of a measure as plain numbers, so that these open too. All are of the discharge cohort;
 * those who never started are left out of each.
 */

export type Pair = Extract<Comparison, { kind: 'pair' }>;

type OfPairs = 'all' | 'like-for-like';

/** A pair of results with everything that is known of it. */
export interface PairOfCourse {
  readonly course: Course;
  readonly baseline: ResultAt;
  readonly discharge: ResultAt;
  readonly pair: Pair;
}

/** A figure over the pairs of a measure: those for whom something is so. */
interface PairQuestion {
  readonly id: string;
  readonly ruleId: string;
  readonly title: string;
  readonly numerator: string;
  readonly of: OfPairs;
  readonly judge: (asked: PairOfCourse, settings: TeamSettings) => Judgement;
}

/** The ids of these figures, for whoever prints the numbers that they are behind. */
export const PAIR_FIGURE_IDS = {
  lost: (measureId: string, reason: PairLossReason) => `pair-lost.${reason}.${measureId}`,
  withBaseline: (measureId: string) => `with-baseline.${measureId}`,
  atHome: (measureId: string) => `pairs-at-home.${measureId}`,
  atCeiling: (measureId: string) => `pairs-at-ceiling.${measureId}`,
  practiceWalkDiffers: (measureId: string) => `practice-walk-differs.${measureId}`,
  differsBy: (measureId: string, condition: string) =>
    `differs-by.${condition.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}.${measureId}`,
  changeClass: (measureId: string, width: number, index: number) =>
    `change-class.${measureId}.${width}.${index}`,
} as const;

const STARTERS = 'Discharged in the period and had started, whatever was measured';
const PAIRS_WORDS: Readonly<Record<OfPairs, string>> = {
  all: 'Discharged in the period, had started, and measured at both ends by the same test',
  'like-for-like': 'Discharged in the period, had started, and measured at both ends like for like',
};

/** Starters who lost their like-for-like pair of a measure in one way. @example id `pair-lost.not-measured.cat-total` */
export function pairLostRule(measure: Measure, reason: PairLossReason): FigureRule {
  const words = PAIR_LOSS_WORDS[reason];
  return {
    id: PAIR_FIGURE_IDS.lost(measure.id, reason),
    ruleId: 'pair-lost@2',
    title: `${measure.shortName}: ${words}`,
    cohort: 'discharge',
    numerator: `Without a like-for-like pair: ${words}`,
    denominator: STARTERS,
    exclusions: 'Did not start',
    source: OWN_RULE,
    judge: (course, { changesOf }) => {
      if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
      const lost = pairLossOf(course, changesOf(course).get(measure.id));
      if (lost === null) return countsNot('Pair, like for like');
      const said = PAIR_LOSS_WORDS[lost];
      return countsIf(lost === reason, capital(said), capital(said));
    },
  };
}

/** Starters with a baseline result of a measure: those who might have been measured again. */
export function withBaselineRule(measure: Measure): FigureRule {
  return {
    id: PAIR_FIGURE_IDS.withBaseline(measure.id),
    ruleId: 'with-baseline@1',
    title: `${measure.shortName}: has a baseline result`,
    cohort: 'discharge',
    numerator: 'A baseline result of this measure, so that it could be measured again',
    denominator: STARTERS,
    exclusions: 'Did not start',
    source: OWN_RULE,
    judge: (course, { changesOf }) => {
      if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
      const has = (changesOf(course).get(measure.id)?.baseline ?? null) !== null;
      return countsIf(has, 'Has a baseline result', 'No baseline result');
    },
  };
}

/** Like-for-like pairs with both tests at the person's home. */
export function atHomeRule(measure: Measure): FigureRule {
  return pairRule(measure, {
    id: PAIR_FIGURE_IDS.atHome(measure.id),
    ruleId: 'pairs-at-home@1',
    title: 'both tests at home',
    numerator: 'Both tests at the home of the person',
    of: 'like-for-like',
    judge: ({ baseline }) =>
      countsIf(
        baseline.result.conditions['place'] === 'home',
        'Both tests at home',
        'Tested elsewhere, or no place recorded',
      ),
  });
}

/** Pairs of which an end is at the ceiling of the test. */
export function atCeilingRule(measure: Measure): FigureRule {
  return pairRule(measure, {
    id: PAIR_FIGURE_IDS.atCeiling(measure.id),
    ruleId: 'pairs-at-ceiling@1',
    title: 'at the ceiling of the test',
    numerator: 'A result at the ceiling of the test at either end, so that the true change is not known',
    of: 'all',
    judge: ({ pair: { ceiling } }) =>
      ceiling === 'none'
        ? countsNot('Below the ceiling at both ends')
        : counts(ceiling === 'both' ? 'At the ceiling at both ends' : `At the ceiling at ${ceiling}`),
  });
}

/** Pairs with a practice walk at one end only. */
export function practiceWalkDiffersRule(measure: Measure): FigureRule {
  return pairRule(measure, {
    id: PAIR_FIGURE_IDS.practiceWalkDiffers(measure.id),
    ruleId: 'practice-walk-differs@1',
    title: 'practice walk at one end only',
    numerator: 'A practice walk at one end and none at the other',
    of: 'all',
    judge: ({ pair: { practiceWalkDiffers } }) =>
      countsIf(practiceWalkDiffers, 'Practice walk at one end only', 'The same at both ends'),
  });
}

/** Pairs that a condition keeps from being like for like. @param condition such as `courseLengthM` */
export function differsByRule(measure: Measure, condition: string): FigureRule {
  const name = conditionName(condition);
  return pairRule(measure, {
    id: PAIR_FIGURE_IDS.differsBy(measure.id, condition),
    ruleId: 'pairs-differ-by@1',
    title: `not like for like by ${name}`,
    numerator: `Not the same ${name} at both ends, or not recorded`,
    of: 'all',
    judge: ({ pair: { differences } }) => {
      const found = differences.find((each) => each.condition === condition);
      return found === undefined ? countsNot(`No difference by ${name}`) : counts(capital(found.words));
    },
  });
}

/** Like-for-like pairs whose change is in one class of the spread. @param index of the class, in widths from zero */
export function changeClassRule(measure: Measure, width: number, index: number): FigureRule {
  const { betterWhen, unit } = measure;
  const { from, to } = endsOfClass(index, width);
  const words =
    betterWhen === 'higher' ? `from ${from} to below ${to} ${unit}` : `above ${from} up to ${to} ${unit}`;
  return pairRule(measure, {
    id: PAIR_FIGURE_IDS.changeClass(measure.id, width, index),
    ruleId: 'change-class@1',
    title: `changed by ${words}`,
    numerator: `A change ${words}; discharge minus baseline`,
    of: 'like-for-like',
    judge: ({ pair }) =>
      countsIf(classIndexOf(pair.change, width, betterWhen) === index, pair.words, pair.words),
  });
}

/** A figure over pairs; who has none is left out, by what is missing. */
export function pairRule(measure: Measure, question: PairQuestion): FigureRule {
  const { id, ruleId, title, numerator, of, judge } = question;
  return {
    id,
    ruleId,
    title: `${measure.shortName}: ${title}`,
    cohort: 'discharge',
    numerator,
    denominator: PAIRS_WORDS[of],
    exclusions: 'Did not start; no pair, by what is missing; pairs not like for like where only such count',
    source: OWN_RULE,
    judge: (course, { changesOf, settings }) => {
      if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
      const change = changesOf(course).get(measure.id);
      if (change === undefined) return leftOut('not-measured', 'Not measured at either end');
      const { comparison: pair, baseline, discharge } = change;
      if (pair.kind === 'no-pair') return leftOut(pair.reason, pair.words);
      if (of === 'like-for-like' && !pair.isLikeForLike) {
        return leftOut('not-like-for-like', `Not like for like: ${pair.differenceWords}`);
      }
      if (baseline === null || discharge === null) throw new Error('A pair has both ends.');
      return judge({ course, baseline, discharge, pair }, settings);
    },
  };
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
