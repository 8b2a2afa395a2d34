// Source: Smid DE and others 2017, J Am Med Dir Assoc 18:53 (DOI from memory, 10.1016/j.jamda.2016.08.002), abstract.
// Printed: 419 people with COPD; changes as mean (SD): SGRQ -9.1 (14.0), CAT -3.0 (6.8), HADS anxiety -1.7 (3.7),
// HADS depression -2.1 (3.7).
// No interval is printed. By hand with t of 418 degrees of freedom, 1.966: half-widths 1.966 x 14.0 / sqrt(419) = 1.344,
// 0.653, 0.355 and 0.355; with the normal quantile they would be 1.34, 0.65, 0.35 and 0.35.
// Tolerance: half a unit of the last printed place for means and SDs. An SD printed to 0.1 leaves a half-width open by
// 0.05 x 1.966 / sqrt(419) = 0.005.
import { beforeAll, describe, expect, it } from 'vitest';
import {
  expectPrinted,
  expectWithin,
  halfWidth,
  momentsOfGroups,
  peopleOf,
} from '../../support/cohort-groups.js';
import type { Ends, Group } from '../../support/cohort-groups.js';
import { itemsAddingUpTo, outcomeOf, reportOnCohort, typedScores } from '../../support/published-cohort.js';
import type { ReportShown } from '../../support/published-cohort.js';

/** Baselines are not printed. */
const SCORES: readonly {
  readonly measure: string;
  readonly groups: readonly Group[];
  readonly mean: string;
  readonly sd: string;
  readonly halfWidth: number;
}[] = [
  {
    // Tenths of a point: -3810.5 over 419 people, mean -9.09; SD 13.97.
    measure: 'sgrq-total',
    groups: [
      [171, 55, -25],
      [55, 55, -9.1],
      [193, 55, 5],
    ],
    mean: '-9.1',
    sd: '14.0',
    halfWidth: 1.344,
  },
  {
    // Points: -1258 over 419 people, mean -3.00; SD 6.80.
    measure: 'cat-total',
    groups: [
      [201, 21, -10],
      [30, 21, 0],
      [188, 21, 4],
    ],
    mean: '-3.0',
    sd: '6.8',
    halfWidth: 0.653,
  },
  {
    // Points: -711 over 419 people, mean -1.70; SD 3.72.
    measure: 'hads-anxiety',
    groups: [
      [228, 9, -5],
      [48, 9, 0],
      [143, 9, 3],
    ],
    mean: '-1.7',
    sd: '3.7',
    halfWidth: 0.355,
  },
  {
    // Points: -885 over 419 people, mean -2.11; SD 3.71.
    measure: 'hads-depression',
    groups: [
      [147, 9, -7],
      [224, 9, 0],
      [48, 9, 3],
    ],
    mean: '-2.1',
    sd: '3.7',
    halfWidth: 0.355,
  },
];

/** Odd items of the HADS are of anxiety, even ones of depression. */
function hadsItems(anxiety: number, depression: number): readonly number[] {
  const even = itemsAddingUpTo(depression, 7);
  return itemsAddingUpTo(anxiety, 7).flatMap((item, index) => [item, even[index] ?? Number.NaN]);
}

const questionnaires = ([sgrq, cat, anxiety, depression]: readonly number[]) => ({
  questionnaires: [
    typedScores('st-georges-respiratory-questionnaire', { 'sgrq-total': sgrq ?? Number.NaN }, 'standard'),
    { questionnaire: 'copd-assessment-test', items: itemsAddingUpTo(cat ?? Number.NaN, 8) },
    {
      questionnaire: 'hospital-anxiety-and-depression-scale',
      items: hadsItems(anxiety ?? Number.NaN, depression ?? Number.NaN),
    },
  ],
});

describe('SGRQ, CAT and HADS, Smid 2017', () => {
  let report: ReportShown;
  beforeAll(async () => {
    const columns = SCORES.map(({ groups }) => peopleOf(groups));
    const endsOf = (person: number, end: keyof Ends) =>
      columns.map((column) => column[person]?.[end] ?? Number.NaN);
    const members = Array.from({ length: 419 }, (_member, person) => ({
      baseline: questionnaires(endsOf(person, 'baseline')),
      discharge: questionnaires(endsOf(person, 'discharge')),
    }));
    report = await reportOnCohort(members);
  });

  describe.each(SCORES)('$measure', ({ measure, groups, mean, sd, halfWidth: byHand }) => {
    it('is constructed from as many people with the printed mean and SD', () => {
      const { change } = momentsOfGroups(groups);
      expect(change.n).toBe(419);
      expectPrinted(change.mean, mean);
      expectPrinted(change.sd, sd);
    });

    it('gives the printed mean and SD of the change, and the interval they make', () => {
      const { change } = outcomeOf(report, measure).likeForLike;
      expect(change.n).toBe(419);
      expectPrinted(change.mean, mean);
      expectPrinted(change.sd, sd);
      expectWithin(halfWidth(change.interval), byHand, 0.005);
    });
  });
});
