// Source: table in Eur Respir J of inpatient rehabilitation in interstitial lung disease (author and year from memory,
// Huppmann 2013).
// Printed: 402 people; 6MWD 308 +/- 6 to 354 +/- 6 m, change 46 +/- 3 m. What stands after +/- is the standard error of
// the mean and not the SD: 6 x sqrt(402) = 120 m, 3 x sqrt(402) = 60 m. A footnote mark is lost: n may be 369; 402 is
// taken here.
// By hand with t of 401 degrees of freedom: 46 +/- 1.966 x 3, so 40 to 52 m.
// Tolerance: half a metre, the last printed place; the interval by one metre, since half a metre of the standard error
// moves its limits by that much.
import { beforeAll, describe, expect, it } from 'vitest';
import { expectPrinted, expectWithin, momentsOfGroups, peopleOf } from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { outcomeOf, reportOnCohort, sixMinuteWalk } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';

/** Whole metres. Changes: 18 496 m over 402 people, mean 46.01 m; SD 60.2 m. */
const WALKS: readonly Group[] = [
  [157, 180, 46],
  [17, 180, 100],
  [9, 308, 46],
  [50, 308, 120],
  [107, 440, -40],
  [62, 440, 120],
];

const standardError = (sd: number | null, n: number): number => (sd ?? Number.NaN) / Math.sqrt(n);

describe('six-minute walk in interstitial lung disease, printed with standard errors', () => {
  let walk: OutcomeShown;
  beforeAll(async () => {
    const members = peopleOf(WALKS).map(({ baseline, discharge }) => ({
      baseline: sixMinuteWalk(baseline),
      discharge: sixMinuteWalk(discharge),
    }));
    const report = await reportOnCohort(members, 'other-interstitial-lung-disease');
    walk = outcomeOf(report, 'six-minute-walk-distance');
  });

  it('is constructed from as many people with the printed means and standard errors', () => {
    const { baseline, discharge, change } = momentsOfGroups(WALKS);
    expect(change.n).toBe(402);
    expectPrinted(standardError(baseline.sd, 402), '6');
    expectPrinted(standardError(discharge.sd, 402), '6');
    expectPrinted(standardError(change.sd, 402), '3');
    expectPrinted(change.mean, '46');
  });

  it('gives SDs of the people, not standard errors of their means', () => {
    const { baseline, discharge, change } = walk.likeForLike;
    expectPrinted(baseline.mean, '308');
    expectPrinted(discharge.mean, '354');
    expectWithin(baseline.sd, 120, 1);
    expectWithin(discharge.sd, 120, 1);
    expectWithin(change.sd, 60, 1);
  });

  it('gives an interval of about two standard errors on each side', () => {
    const { change } = walk.likeForLike;
    expectPrinted(change.mean, '46');
    // Had the standard errors been taken for SDs, it would be 45.7 to 46.3 m.
    expectWithin(change.interval?.low, 40.1, 1);
    expectWithin(change.interval?.high, 51.9, 1);
  });
});
