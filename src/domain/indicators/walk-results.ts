import type { CourseChange } from '../change/course-changes.js';
import type { Result } from '../cohort/referral-facts.js';
import { WALK_TESTS } from '../measures/registered.js';
import type { WalkTest } from '../measures/walk-test.js';

/** A walk that stands for a person at one end. */
export interface WalkResult {
  readonly test: WalkTest;
  readonly end: 'baseline' | 'discharge';
  readonly result: Result;
}

/** The walks that stand for a person, at both ends, in the order of the catalogue. */
export function walkResultsOf(changes: ReadonlyMap<string, CourseChange>): readonly WalkResult[] {
  return WALK_TESTS.flatMap((test) => {
    const change = changes.get(test.measure.id);
    if (change === undefined) return [];
    const ends = ['baseline', 'discharge'] as const;
    return ends.flatMap((end) => {
      const result = change[end]?.result;
      return result === undefined ? [] : [{ test, end, result }];
    });
  });
}
