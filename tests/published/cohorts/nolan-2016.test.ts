// Source: Nolan CM and others 2016, Thorax (doi 10.1136/thoraxjnl-2015-207782), abstract.
// Printed: 324 people with COPD, eight weeks of rehabilitation. EQ-5D-5L index change 0.065 (95 % interval 0.047 to
// 0.083), standardised response mean 0.39; EQ-VAS change 8.6 (6.5 to 10.7), standardised response mean 0.44.
// The SDs follow from the response means and not from the intervals, which are therefore a check of their own:
// 0.065 / 0.39 = 0.167 and 8.6 / 0.44 = 19.5. By hand: 1.967 x 0.1667 / 18 = 0.0182, 1.967 x 19.5 / 18 = 2.13.
// Tolerance: half a unit of the last printed place.
import { beforeAll, describe, expect, it } from 'vitest';
import { expectPrinted, momentsOfGroups, peopleOf } from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { outcomeOf, reportOnCohort, typedScores } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';

/** Thousandths; baselines are not printed. Changes: 21.15 over 324 people, mean 0.0653; SD 0.1664. */
const INDEX: readonly Group[] = [
  [84, 0.6, -0.15],
  [105, 0.6, 0],
  [135, 0.6, 0.25],
];

/** Whole points; baselines are not printed. Changes: 2790 over 324 people, mean 8.61; SD 19.49. */
const VAS: readonly Group[] = [
  [159, 50, -10],
  [111, 50, 20],
  [54, 50, 40],
];

const eq5d = (index: number, vas: number) => ({
  questionnaires: [typedScores('eq-5d-5l', { 'eq-5d-5l-index': index, 'eq-vas': vas }, 'england-2018')],
});

describe('EQ-5D-5L, Nolan 2016', () => {
  let index: OutcomeShown;
  let vas: OutcomeShown;
  beforeAll(async () => {
    const scales = peopleOf(VAS);
    const members = peopleOf(INDEX).map(({ baseline, discharge }, position) => ({
      baseline: eq5d(baseline, scales[position]?.baseline ?? Number.NaN),
      discharge: eq5d(discharge, scales[position]?.discharge ?? Number.NaN),
    }));
    const report = await reportOnCohort(members);
    index = outcomeOf(report, 'eq-5d-5l-index');
    vas = outcomeOf(report, 'eq-vas');
  });

  it('is constructed from as many people with the printed mean and response mean', () => {
    const [utility, scale] = [momentsOfGroups(INDEX).change, momentsOfGroups(VAS).change];
    expect([utility.n, scale.n]).toEqual([324, 324]);
    expectPrinted(utility.mean, '0.065');
    expectPrinted(utility.mean / utility.sd, '0.39');
    expectPrinted(scale.mean, '8.6');
    expectPrinted(scale.mean / scale.sd, '0.44');
  });

  it('gives the printed change of the index, its interval and its response mean', () => {
    const { change } = index.likeForLike;
    expect(change.n).toBe(324);
    expectPrinted(change.mean, '0.065');
    expectPrinted(change.interval?.low, '0.047');
    expectPrinted(change.interval?.high, '0.083');
    expectPrinted(change.standardisedResponseMean, '0.39');
  });

  it('gives the printed change of the visual scale, its interval and its response mean', () => {
    const { change } = vas.likeForLike;
    expect(change.n).toBe(324);
    expectPrinted(change.mean, '8.6');
    expectPrinted(change.interval?.low, '6.5');
    expectPrinted(change.interval?.high, '10.7');
    expectPrinted(change.standardisedResponseMean, '0.44');
  });
});
