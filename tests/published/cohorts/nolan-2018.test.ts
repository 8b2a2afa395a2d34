// Source: Nolan CM and others 2018, Thorax (doi 10.1136/thoraxjnl-2017-210589), abstract.
// Printed: 72 people with idiopathic pulmonary fibrosis; ISWT change 54 m (95 % interval 38 to 70) after rehabilitation.
// The SD of the change is not printed; 69 m is what the interval implies, 16 x sqrt(72) / 1.994 = 68.
// Tolerance: half a metre, the last printed place.
import { beforeAll, describe, expect, it } from 'vitest';
import { expectPrinted, momentsOfGroups, peopleOf } from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { outcomeOf, reportOnCohort, shuttleWalk } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';

/** Shuttles of 10 m; baselines are not printed. Changes: 3890 m over 72 people, mean 54.03 m; SD 69.05 m. */
const WALKS: readonly Group[] = [
  [28, 300, -20],
  [19, 300, 50],
  [25, 300, 140],
];

describe('incremental shuttle walk in pulmonary fibrosis, Nolan 2018', () => {
  let walk: OutcomeShown;
  beforeAll(async () => {
    const members = peopleOf(WALKS).map(({ baseline, discharge }) => ({
      baseline: shuttleWalk(baseline),
      discharge: shuttleWalk(discharge),
    }));
    const report = await reportOnCohort(members, 'idiopathic-pulmonary-fibrosis');
    walk = outcomeOf(report, 'incremental-shuttle-walk-distance');
  });

  it('is constructed from as many people with the printed mean', () => {
    const { change } = momentsOfGroups(WALKS);
    expect(change.n).toBe(72);
    expectPrinted(change.mean, '54');
    expectPrinted(change.sd, '69');
  });

  it('gives the printed change with its interval', () => {
    const { change } = walk.likeForLike;
    expect(change.n).toBe(72);
    expectPrinted(change.mean, '54');
    expectPrinted(change.interval?.low, '38');
    expectPrinted(change.interval?.high, '70');
  });

  it('says that the threshold was found in another disease', () => {
    // The default of 47.5 m is of COPD (Singh 2008).
    expect(walk.thresholds).toMatchObject([
      { thresholdId: 'iswd-singh-2008', pairs: 72, pairsOfAnotherDiagnosis: 72 },
    ]);
  });
});
