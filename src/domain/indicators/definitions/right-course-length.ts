import type { Indicator } from '../indicator.js';
import { counts, countsNot, leftOut } from '../judge.js';
import { WALK_TEST_STANDARD_2014 } from '../sources.js';
import { walkResultsOf } from '../walk-results.js';

/** Every walk test was on a course of the standard length, at both ends; a length not recorded is not the right one. */
export const RIGHT_COURSE_LENGTH: Indicator = {
  id: 'right-course-length',
  version: 1,
  title: 'Right course length',
  cohort: 'discharge',
  targetKey: 'right-course-length',
  numerator: 'Every walk test, at both ends, on 30 m (six-minute walk) or 10 m (shuttle walks)',
  denominator: 'Discharged in the period, had started, and did a walk test',
  exclusions: 'Did not start; no walk test with a distance or time',
  source: WALK_TEST_STANDARD_2014,
  judge: (course, { changesOf }) => {
    if (course.startedOn === null) return leftOut('did-not-start', 'Did not start');
    const walks = walkResultsOf(changesOf(course));
    if (walks.length === 0) return leftOut('no-walk-test', 'No walk test with a distance or time');
    const wrong = walks.filter(
      ({ test, result }) => result.conditions['courseLengthM'] !== String(test.courseLengthM.usual),
    );
    if (wrong.length === 0) return counts('Every walk on a course of the standard length');
    const lengths = wrong.map(({ test, end, result }) => {
      const length = result.conditions['courseLengthM'] ?? null;
      return `${test.shortName} at ${end} ${length === null ? 'not recorded' : `on ${length} m`}`;
    });
    return countsNot(`Not the standard length: ${lengths.join(', ')}`);
  },
};
