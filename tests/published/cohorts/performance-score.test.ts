// Source: cohort of outpatient rehabilitation in COPD with a performance score of the six-minute walk, PMC9601141.
// Printed: 575 people, change of the 6MWD 32.3 (SD 71.2) m; 311 reached the MCID, 264 did not.
// No interval is printed. By hand: 1.964 x 71.2 / sqrt(575) = 5.83, so 26.5 to 38.1 m. 311 / 575 = 54.1 %.
// The MCID is taken to be 30 m, the standard's; the excerpt does not name it.
// Tolerance: half a unit of the last printed place; none for counts.
import { beforeAll, describe, expect, it } from 'vitest';
import { expectPrinted, momentsOfGroups, peopleOf } from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { outcomeOf, reportOnCohort, sixMinuteWalk } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';

/** Whole metres; baselines are not printed. Changes: 18 569 m over 575 people, mean 32.29 m; SD 71.22 m. */
const WALKS: readonly Group[] = [
  [7, 350, -80],
  [186, 350, -60],
  [71, 350, 29],
  [41, 350, 30],
  [270, 350, 100],
];

describe('six-minute walk, 575 people in outpatient rehabilitation', () => {
  let walk: OutcomeShown;
  beforeAll(async () => {
    const members = peopleOf(WALKS).map(({ baseline, discharge }) => ({
      baseline: sixMinuteWalk(baseline),
      discharge: sixMinuteWalk(discharge),
    }));
    walk = outcomeOf(await reportOnCohort(members), 'six-minute-walk-distance');
  });

  it('is constructed from as many people with the printed mean and SD', () => {
    const { change } = momentsOfGroups(WALKS);
    expect(change.n).toBe(575);
    expectPrinted(change.mean, '32.3');
    expectPrinted(change.sd, '71.2');
  });

  it('gives the interval of the mean change', () => {
    expectPrinted(walk.likeForLike.change.mean, '32.3');
    expectPrinted(walk.likeForLike.change.sd, '71.2');
    expectPrinted(walk.likeForLike.change.interval?.low, '26.5');
    expectPrinted(walk.likeForLike.change.interval?.high, '38.1');
  });

  it('counts the 311 who reached the threshold, those at exactly 30 m among them, and the 264 who did not', () => {
    const { midReached, littleChange, worse } = walk.likeForLike;
    expect(midReached).toMatchObject({ numerator: 311, denominator: 575 });
    expectPrinted(midReached?.percentage, '54.1');
    expect((littleChange?.numerator ?? 0) + (worse?.numerator ?? 0)).toBe(264);
    // 71 people fell short by one metre.
    expect(littleChange?.numerator).toBe(71);
  });
});
