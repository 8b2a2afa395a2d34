import type { Indicator } from '../indicator.js';
import { counts, countsNot, leftOut } from '../judge.js';
import { WALK_TEST_STANDARD_2014 } from '../sources.js';
import { walkResultsOf } from '../walk-results.js';

/** Every walk test that asks for a practice walk had one, at both ends, of those discharged who had started. */
export const PRACTICE_WALK_DONE: Indicator = {
  id: 'practice-walk-done',
  version: 1,
  title: 'Practice walk done',
  cohort: 'discharge',
  targetKey: 'practice-walk-done',
  numerator:
    'Two attempts at each walk test that asks for them, at baseline and, where measured again, at discharge',
  denominator: 'Discharged in the period, had started, and walked a test that asks for a practice walk',
  exclusions: 'Did not start; no walk test that asks for a practice walk',
  source: WALK_TEST_STANDARD_2014,
  judge: (course, { changesOf }) => {
    if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
    const walks = walkResultsOf(changesOf(course)).filter(({ result }) => result.hadPracticeWalk !== null);
    if (walks.length === 0) {
      return leftOut('no-practice-walk-asked', 'No walk test that asks for a practice walk');
    }
    const without = walks.filter(({ result }) => result.hadPracticeWalk !== true);
    if (without.length === 0) return counts('Every walk had its practice walk');
    return countsNot(
      `No practice walk: ${without.map(({ test, end }) => `${test.shortName} at ${end}`).join(', ')}`,
    );
  },
};
