import type { ChangeClass } from '../change/change.js';
import type { Measure } from '../measures/measure.js';
import type { FigureRule, JudgeContext, Judgement } from './indicator.js';
import { counts, countsIf, countsNot, leftOut } from './judge.js';
import { BTS_GUIDELINE_2013, OWN_RULE, WALK_TEST_STANDARD_2014 } from './sources.js';
import type { Course } from '../pathway/course.js';

/** Every figure that the outcomes of one measure give. */
export interface OutcomeFigures {
  /** Pairs, like for like or not, of those discharged who had started. */
  readonly pairs: FigureRule;
  readonly likeForLikePairs: FigureRule;
  /** By class of change: of like-for-like pairs (the headline), and of all pairs. */
  readonly likeForLike: ClassFigures;
  readonly allPairs: ClassFigures;
  readonly practiceWalk: { readonly baseline: FigureRule; readonly discharge: FigureRule };
}

/** Shares of pairs by class of change. */
export interface ClassFigures {
  readonly midReached: FigureRule;
  readonly littleChange: FigureRule;
  readonly worse: FigureRule;
}

type Basis = 'like-for-like' | 'all-pairs';

/** The figures of a measure, all of the discharge cohort. Those who never started are left out of each. */
export function outcomeFigures(measure: Measure): OutcomeFigures {
  return {
    pairs: pairsRule(measure, 'all-pairs'),
    likeForLikePairs: pairsRule(measure, 'like-for-like'),
    likeForLike: classFigures(measure, 'like-for-like'),
    allPairs: classFigures(measure, 'all-pairs'),
    practiceWalk: {
      baseline: practiceWalkRule(measure, 'baseline'),
      discharge: practiceWalkRule(measure, 'discharge'),
    },
  };
}

/** All the figures of a measure in one list. */
export function outcomeRules(measure: Measure): readonly FigureRule[] {
  const { pairs, likeForLikePairs, likeForLike, allPairs, practiceWalk } = outcomeFigures(measure);
  return [
    pairs,
    likeForLikePairs,
    ...Object.values<FigureRule>({ ...likeForLike }),
    ...Object.values<FigureRule>({ ...allPairs }),
    practiceWalk.baseline,
    practiceWalk.discharge,
  ];
}

function pairsRule(measure: Measure, basis: Basis): FigureRule {
  const isStrict = basis === 'like-for-like';
  return {
    id: `${isStrict ? 'like-for-like-pairs' : 'pairs'}.${measure.id}`,
    ruleId: isStrict ? 'like-for-like-pairs@1' : 'pairs@2',
    title: `${measure.shortName}: measured at both ends${isStrict ? ', like for like' : ''}`,
    cohort: 'discharge',
    numerator: isStrict
      ? 'A baseline and a discharge result under the same conditions, all of them recorded'
      : 'A baseline and a discharge result of the same test; the endurance walk at the same speed; breathlessness on either scale',
    denominator: 'Discharged in the period and had started, whatever was measured',
    exclusions: 'Did not start',
    source: BTS_GUIDELINE_2013,
    judge: (course, context) => {
      if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
      const comparison = context.changesOf(course).get(measure.id)?.comparison;
      if (comparison === undefined) return countsNot('Not measured at either end');
      if (comparison.kind === 'no-pair') return countsNot(comparison.words);
      if (comparison.isLikeForLike) return counts('Pair, like for like');
      return isStrict
        ? countsNot(`Not like for like: ${comparison.differenceWords}`)
        : counts(`Pair, but ${comparison.differenceWords}`);
    },
  };
}

function classFigures(measure: Measure, basis: Basis): ClassFigures {
  const rule = (name: string, asked: ChangeClass, title: string, numerator: string): FigureRule => ({
    id: `${name}.${measure.id}${basis === 'all-pairs' ? '.all-pairs' : ''}`,
    ruleId: `${name}-${basis}@${basis === 'all-pairs' ? 2 : 1}`,
    title: `${measure.shortName}: ${title}${basis === 'all-pairs' ? ', all pairs' : ''}`,
    cohort: 'discharge',
    numerator,
    denominator:
      basis === 'all-pairs'
        ? 'Discharged in the period, had started, and measured at both ends by the same test'
        : 'Discharged in the period, had started, and measured at both ends like for like',
    exclusions: 'Did not start; no pair, by what is missing; pairs not like for like where only such count',
    source: OWN_RULE,
    judge: (course, context) => judgeClass(course, context, measure.id, basis, asked),
  });
  return {
    midReached: rule(
      'mid-reached',
      'improved',
      'reached the minimal important difference',
      'Improved by at least the threshold that judges this person; equality counts',
    ),
    littleChange: rule(
      'little-change',
      'little-change',
      'little change',
      'Neither improved nor worse by the threshold that judges this person',
    ),
    worse: rule(
      'worse',
      'worse',
      'worse',
      'Worse by at least the threshold; its own for getting worse where one was published for this diagnosis',
    ),
  };
}

function judgeClass(
  course: Course,
  { changesOf }: JudgeContext,
  measureId: string,
  basis: Basis,
  asked: ChangeClass,
): Judgement {
  if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
  const found = changesOf(course).get(measureId);
  if (found === undefined) return leftOut('not-measured', 'Not measured at either end');
  const { comparison } = found;
  if (comparison.kind === 'no-pair') return leftOut(comparison.reason, comparison.words);
  if (basis === 'like-for-like' && !comparison.isLikeForLike) {
    return leftOut('not-like-for-like', `Not like for like: ${comparison.differenceWords}`);
  }
  if (comparison.class === 'change-only') return leftOut('no-threshold', `${comparison.words}; no threshold`);
  return countsIf(comparison.class === asked, comparison.words, comparison.words);
}

function practiceWalkRule(measure: Measure, end: 'baseline' | 'discharge'): FigureRule {
  return {
    id: `practice-walk.${measure.id}.${end}`,
    ruleId: 'practice-walk-by-measure@1',
    title: `${measure.shortName}: practice walk at ${end}`,
    cohort: 'discharge',
    numerator: 'Two attempts, so that the better one counts',
    denominator: 'Discharged in the period, had started, and has a result of this test at this end',
    exclusions: 'Did not start; no result at this end',
    source: WALK_TEST_STANDARD_2014,
    judge: (course, { changesOf }) => {
      if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
      const had = changesOf(course).get(measure.id)?.[end]?.result.hadPracticeWalk ?? null;
      if (had === null) {
        return leftOut(
          end === 'baseline' ? 'no-baseline-result' : 'no-discharge-result',
          `No result at ${end}`,
        );
      }
      return countsIf(had, 'Practice walk done', 'No practice walk');
    },
  };
}
