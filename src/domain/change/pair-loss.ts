import type { Course } from '../pathway/course.js';
import type { CourseChange } from './course-changes.js';

/** Why a starter has no like-for-like pair of a measure, in words. */
export const PAIR_LOSS_WORDS = {
  'not-measured': 'not measured at either end',
  'no-baseline-result': 'no baseline result',
  'no-discharge-assessment': 'no discharge assessment',
  'not-at-discharge-assessment': 'discharge assessment done, but not this',
  'not-comparable': 'measured at both ends, but not comparable',
  'compared-on-other-scale': 'not lost: compared on the scale of the baseline',
  'not-like-for-like': 'a pair, but not like for like',
} as const satisfies Readonly<Record<string, string>>;

export type PairLossReason = keyof typeof PAIR_LOSS_WORDS;

/** Every reason, in the order in which reports print them. */
export const PAIR_LOSS_REASONS = Object.keys(PAIR_LOSS_WORDS).filter(
  (reason): reason is PairLossReason => reason in PAIR_LOSS_WORDS,
);

/**
 * Why a starter has no like-for-like pair of a measure.
 *
 * @param change of the measure; undefined where neither end has it
 * @returns null where there is such a pair
 */
export function pairLossOf(course: Course, change: CourseChange | undefined): PairLossReason | null {
  if (change === undefined) return 'not-measured';
  const { comparison } = change;
  if (comparison.kind === 'pair') return comparison.isLikeForLike ? null : 'not-like-for-like';
  if (comparison.reason !== 'no-discharge-result') return comparison.reason;
  return course.dischargeAssessedOn === null ? 'no-discharge-assessment' : 'not-at-discharge-assessment';
}
