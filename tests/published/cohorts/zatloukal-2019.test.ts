// Source: Zatloukal J and others 2019, Chron Respir Dis (doi 10.1177/1479973119853828), abstract.
// Printed: 531 people with COPD, six weeks of rehabilitation.
//   ISWT 217.7 (SD 139.8) to 279.6 (149.5) m, change 61.8 m (95 % interval 56.0 to 67.5).
//   ESWT 195.8 (118.8) to 537.4 (378.3) s, change 342.0 s (312.4 to 371.6); half the SD of the change is 173.7 s.
// The SD of the ESWT change, 347.4 s, is printed apart from the interval: the interval is a check of its own. The SD of
// the ISWT change is not printed; 67.4 m is what the interval implies, 5.75 x sqrt(531) / 1.964.
// Tolerance: half a unit of the last printed place. Two figures cannot be met by anybody measured twice and are held to
// what the others make of them: the ISWT at discharge (217.7 and 61.8 make 279.5, printed 279.6) and the ESWT at
// discharge (195.8 and 342.0 make 537.8, printed 537.4).
import { beforeAll, describe, expect, it } from 'vitest';
import { expectPrinted, momentsOfGroups, peopleOf } from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { outcomeOf, reportOnCohort, shuttleWalk } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';
import type { Body } from '../../support/entries.js';

/** Shuttles of 10 m. Changes: 32 800 m over 531 people, mean 61.77 m; SD 67.44 m. */
const ISWT: readonly Group[] = [
  [88, 30, 20],
  [68, 30, 60],
  [42, 220, -40],
  [157, 220, 160],
  [113, 360, 20],
  [63, 420, 20],
];

/** Whole seconds. Changes: 181 620 s over 531 people, mean 342.03 s; SD 347.39 s. */
const ESWT: readonly Group[] = [
  [125, 60, 0],
  [112, 80, 710],
  [26, 195, 200],
  [20, 200, 750],
  [131, 300, 0],
  [66, 330, 700],
  [51, 340, 700],
];

const enduranceWalk = (timeS: number): Body => ({
  test: 'endurance-shuttle-walk',
  attempt: 1,
  timeS,
  speedLevel: 6,
  courseLengthM: 10,
  walkingAid: 'none',
  oxygenLPerMin: 0,
});
const bothWalks = (distanceM: number, timeS: number): Body => ({
  walkTests: [...(shuttleWalk(distanceM)['walkTests'] as Body[]), enduranceWalk(timeS)],
});

describe('incremental and endurance shuttle walk, Zatloukal 2019', () => {
  let iswt: OutcomeShown;
  let eswt: OutcomeShown;
  beforeAll(async () => {
    const times = peopleOf(ESWT);
    const members = peopleOf(ISWT).map(({ baseline, discharge }, index) => ({
      baseline: bothWalks(baseline, times[index]?.baseline ?? Number.NaN),
      discharge: bothWalks(discharge, times[index]?.discharge ?? Number.NaN),
    }));
    // One person more, at discharge only: with this time the mean at discharge would be 537.4 s, as printed.
    const unpaired = { baseline: null, discharge: { walkTests: [enduranceWalk(325)] } };
    const report = await reportOnCohort([...members, unpaired]);
    iswt = outcomeOf(report, 'incremental-shuttle-walk-distance');
    eswt = outcomeOf(report, 'endurance-shuttle-walk-time');
  });

  it('is constructed from as many people with the printed means and SDs', () => {
    const [walk, endurance] = [momentsOfGroups(ISWT), momentsOfGroups(ESWT)];
    expect([walk.change.n, endurance.change.n]).toEqual([531, 531]);
    expectPrinted(walk.baseline.mean, '217.7');
    expectPrinted(walk.baseline.sd, '139.8');
    expectPrinted(walk.discharge.sd, '149.5');
    expectPrinted(walk.change.mean, '61.8');
    expectPrinted(endurance.baseline.mean, '195.8');
    expectPrinted(endurance.baseline.sd, '118.8');
    expectPrinted(endurance.discharge.sd, '378.3');
    expectPrinted(endurance.change.mean, '342.0');
    expectPrinted(endurance.change.sd / 2, '173.7');
  });

  it('gives the printed change of the ISWT with its interval', () => {
    expect(iswt.likeForLike.change.n).toBe(531);
    expectPrinted(iswt.likeForLike.change.mean, '61.8');
    expectPrinted(iswt.likeForLike.change.interval?.low, '56.0');
    expectPrinted(iswt.likeForLike.change.interval?.high, '67.5');
  });

  it('gives the printed change of the ESWT with the interval that its SD makes', () => {
    expect(eswt.likeForLike.change.n).toBe(531);
    expectPrinted(eswt.likeForLike.change.mean, '342.0');
    expectPrinted((eswt.likeForLike.change.sd ?? Number.NaN) / 2, '173.7');
    expectPrinted(eswt.likeForLike.change.interval?.low, '312.4');
    expectPrinted(eswt.likeForLike.change.interval?.high, '371.6');
  });

  it('takes the change from people, not from the means at both ends of everybody measured', () => {
    expect(eswt.pairsOverStarters).toMatchObject({ numerator: 531, denominator: 532 });
    expectPrinted(eswt.likeForLike.discharge.mean, '537.8');
    expectPrinted(iswt.likeForLike.discharge.mean, '279.5');
  });

  it('gives the printed SDs of both ends', () => {
    expectPrinted(iswt.likeForLike.baseline.sd, '139.8');
    expectPrinted(iswt.likeForLike.discharge.sd, '149.5');
    expectPrinted(eswt.likeForLike.baseline.sd, '118.8');
    expectPrinted(eswt.likeForLike.discharge.sd, '378.3');
  });
});
