// Source: Houben-Wilke S and others 2018, Health Qual Life Outcomes, CAT responders, abstract.
// Printed: 497 people with COPD; 220 (57.7 %) improved by at least 2 points; median change -3.0 (IQR -7.0 to 1.0).
// 220 of 497 would be 44.3 %: the percentage is of the 381 people measured twice (220 / 0.577 = 381).
// Tolerance: half a unit of the last printed place; none for counts.
import { beforeAll, describe, expect, it } from 'vitest';
import { expectPrinted, peopleOf } from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { itemsAddingUpTo, outcomeOf, reportOnCohort } from '../../support/published-cohort.js';
import type { OutcomeShown } from '../../support/published-cohort.js';

/**
 * Whole points, in order: of 381 the 96th is the lower quartile, the 191st the median, the 286th the upper quartile.
 * 60 + 60 + 90 + 10 = 220 people improved by 2 points or more.
 */
const TOTALS: readonly Group[] = [
  [60, 22, -12],
  [60, 22, -7],
  [90, 22, -3],
  [10, 22, -2],
  [50, 22, 0],
  [40, 22, 1],
  [71, 22, 5],
];

const cat = (total: number) => ({
  questionnaires: [{ questionnaire: 'copd-assessment-test', items: itemsAddingUpTo(total, 8) }],
});

describe('CAT responders, Houben-Wilke 2018', () => {
  let total: OutcomeShown;
  beforeAll(async () => {
    const paired = peopleOf(TOTALS).map(({ baseline, discharge }) => ({
      baseline: cat(baseline),
      discharge: cat(discharge),
    }));
    const left = Array.from({ length: 497 - 381 }, () => ({
      baseline: cat(22),
      discharge: null,
      closedAs: 'exacerbation' as const,
    }));
    total = outcomeOf(await reportOnCohort([...paired, ...left]), 'cat-total');
  });

  it('counts the printed responders of those measured twice, equality among them', () => {
    expect(total.likeForLike.midReached).toMatchObject({ numerator: 220, denominator: 381 });
    expectPrinted(total.likeForLike.midReached?.percentage, '57.7');
  });

  it('shows beside it what the share is of everybody, if nobody else responded', () => {
    expect(total.responders).toMatchObject({ measured: 381, eligible: 497 });
    expectPrinted(total.responders?.worst, '44.3');
  });

  it('gives the printed median and quartiles of the changes', () => {
    const { median, lowerQuartile, upperQuartile } = total.likeForLike.changeSummary;
    expect([median, lowerQuartile, upperQuartile]).toEqual([-3, -7, 1]);
  });
});
