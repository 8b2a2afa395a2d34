import type { WalkTestEntry } from '../assessment/assessment.js';
import { findWalkTest } from '../measures/catalogue.js';
import type { WalkTest } from '../measures/walk-test.js';

/** A walk test with its attempts that were done, by number; a test whose every attempt was not done is left out. */
export interface DoneWalks {
  readonly test: WalkTest;
  readonly attempts: readonly WalkTestEntry[];
}

/** The walk tests of an assessment that were done, each with its attempts. A walk of zero metres was done. */
export function doneWalks(walks: readonly WalkTestEntry[]): readonly DoneWalks[] {
  const done = walks.filter((walk) => walk.notDoneReason === null);
  return [...new Set(done.map((walk) => walk.test))].flatMap((id) => {
    const test = findWalkTest(id);
    const attempts = done.filter((walk) => walk.test === id).sort((a, b) => a.attempt - b.attempt);
    return test === undefined ? [] : [{ test, attempts }];
  });
}
