// Source: Kon SSC and others 2014, Lancet Respir Med 2:195 (doi 10.1016/S2213-2600(14)70001-3), abstract.
// Printed: 565 of 675 people (84 %) with COPD had the CAT before and after eight weeks of rehabilitation; change -2.5
// (95 % interval -3.0 to -1.9).
// The SD of the change is not printed; 6.7 is what the interval implies, 0.55 x sqrt(565) / 1.964.
// Tolerance: half a unit of the last printed place; none for counts.
import { beforeAll, describe, expect, it } from 'vitest';
import { expectPrinted, momentsOfGroups, peopleOf } from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { itemsAddingUpTo, outcomeOf, reportOnCohort } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';

/** Whole points; baselines are not printed. Changes: -1399 over 565 people, mean -2.48; SD 6.68. */
const TOTALS: readonly Group[] = [
  [247, 22, -10],
  [279, 22, 3],
  [39, 22, 6],
];

const NOT_MEASURED_AGAIN = 675 - 565;

const cat = (total: number) => ({
  questionnaires: [{ questionnaire: 'copd-assessment-test', items: itemsAddingUpTo(total, 8) }],
});

describe('COPD Assessment Test, Kon 2014', () => {
  let total: OutcomeShown;
  beforeAll(async () => {
    const paired = peopleOf(TOTALS).map(({ baseline, discharge }) => ({
      baseline: cat(baseline),
      discharge: cat(discharge),
    }));
    // They left, so that they are discharged without having been measured again.
    const left = Array.from({ length: NOT_MEASURED_AGAIN }, () => ({
      baseline: cat(22),
      discharge: null,
      closedAs: 'chose-to-stop' as const,
    }));
    total = outcomeOf(await reportOnCohort([...paired, ...left]), 'cat-total');
  });

  it('is constructed from as many people with the printed mean', () => {
    const { change } = momentsOfGroups(TOTALS);
    expect(change.n).toBe(565);
    expectPrinted(change.mean, '-2.5');
    expectPrinted(change.sd, '6.7');
  });

  it('gives the printed change with its interval, from the items', () => {
    expectPrinted(total.likeForLike.change.mean, '-2.5');
    expectPrinted(total.likeForLike.change.interval?.low, '-3.0');
    expectPrinted(total.likeForLike.change.interval?.high, '-1.9');
  });

  it('gives the paired share as a figure of its own', () => {
    expect(total.pairsOverStarters).toMatchObject({ numerator: 565, denominator: 675 });
    expectPrinted(total.pairsOverStarters.percentage, '84');
  });

  it('bounds the responders by those not measured again', () => {
    // 247 of the table fell by 2 points or more; 110 more could have.
    expect(total.responders).toMatchObject({ achieved: 247, measured: 565, eligible: 675 });
    expectPrinted(total.responders?.worst, '36.6');
    expectPrinted(total.responders?.best, '52.9');
  });
});
