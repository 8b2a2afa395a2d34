// Source: Jones SE and others 2013, Thorax 68:1015 (doi 10.1136/thoraxjnl-2013-203576), abstract.
// Printed: 239 people with COPD; five-repetition sit-to-stand, median (quartiles) 14.1 (11.5, 21.3) to 12.4 (10.2, 16.3)
// s; threshold 1.7 s.
// Only medians are printed, so no interval can be checked: medians and quartiles are, and that the median of the changes
// is not the difference of the medians. That median is not printed; it is worked by hand from the people below.
// Tolerance: none, the quartiles fall on people.
import { beforeAll, describe, expect, it } from 'vitest';
import { peopleOf } from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { outcomeOf, reportOnCohort } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';

/**
 * Tenths of a second. Of 239 in order the 120th is the median and the quartiles lie midway between the 60th and the 61st
 * and between the 179th and the 180th.
 * Changes in order: -13.7 x 20, -8.9 x 30, -5.0 x 19, -1.7 x 30, then -1.3 x 50 with the 120th among them.
 */
const STANDS: readonly Group[] = [
  [40, 9, -0.4],
  [50, 11.5, -1.3],
  [30, 14.1, -1.7],
  [30, 14.1, 2.2],
  [30, 21.3, -8.9],
  [10, 21.3, -5],
  [20, 21.3, -0.3],
  [20, 30, -13.7],
  [9, 30, -5],
];

const stands = (timeS: number) => ({ sitToStands: [{ test: 'five-repetition-sit-to-stand', timeS }] });

describe('five-repetition sit-to-stand, Jones 2013', () => {
  let outcome: OutcomeShown;
  beforeAll(async () => {
    const members = peopleOf(STANDS).map(({ baseline, discharge }) => ({
      baseline: stands(baseline),
      discharge: stands(discharge),
    }));
    outcome = outcomeOf(await reportOnCohort(members), 'five-repetition-sit-to-stand');
  });

  it('gives the printed medians and quartiles of both ends', () => {
    const { baseline, discharge } = outcome.likeForLike;
    expect(baseline).toMatchObject({ n: 239, median: 14.1, lowerQuartile: 11.5, upperQuartile: 21.3 });
    expect(discharge).toMatchObject({ n: 239, median: 12.4, lowerQuartile: 10.2, upperQuartile: 16.3 });
  });

  it('gives the median of the changes, which is not the difference of the medians', () => {
    // 12.4 less 14.1 would be -1.7 s.
    expect(outcome.likeForLike.changeSummary.median).toBe(-1.3);
  });

  it('counts fewer seconds as better, and exactly 1.7 s as the threshold reached', () => {
    // 20 + 30 + 19 people gained more and 30 exactly 1.7 s; 30 got worse by 2.2 s.
    expect(outcome.likeForLike.midReached).toMatchObject({ numerator: 99, denominator: 239 });
    expect(outcome.likeForLike.worse?.numerator).toBe(30);
  });
});
