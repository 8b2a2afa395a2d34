// Source: table in Eur Respir J of the 6MWD and SGRQ before and after rehabilitation (that it is of the emphysema trial is
// from memory).
// Printed: 1217 people; 6MWD 348.0 (SD 95.1) to 370.8 (96.2) m, change 22.8 (53.6) m; SGRQ total 56.5 (13.0) to 53.0
// (12.7), change -3.5 (9.9); symptoms -2.3 (16.2), activity -2.5 (10.8), impacts -4.4 (13.4), the last from 41.4 to 36.9.
// No interval is printed. By hand with t of 1216 degrees of freedom, 1.962: half-widths 1.962 x 53.6 / sqrt(1217) =
// 3.01 m and 0.557 points.
// Tolerance: half a unit of the last printed place. An SD printed to 0.1 leaves a half-width open by 0.05 x 1.962 /
// sqrt(1217) = 0.003.
import { beforeAll, describe, expect, it } from 'vitest';
import {
  expectPrinted,
  expectWithin,
  halfWidth,
  momentsOfGroups,
  peopleOf,
} from '../../support/cohort-groups.js';
import type { Group } from '../../support/cohort-groups.js';
import { outcomeOf, reportOnCohort, sixMinuteWalk, typedScores } from '../../support/published-cohort.js';
import type { ReportShown } from '../../support/published-cohort.js';

/** Whole metres. Changes: 27 748 m over 1217 people, mean 22.80 m; SD 53.59 m. */
const WALKS: readonly Group[] = [
  [204, 230, 23],
  [25, 230, 60],
  [163, 230, 100],
  [324, 350, -50],
  [129, 350, 100],
  [372, 470, 23],
];

/** Tenths of a point. Changes: -4287 over 1217 people, mean -3.52; SD 9.89. */
const TOTALS: readonly Group[] = [
  [282, 42, -10],
  [193, 42, 8],
  [290, 56.5, 8],
  [126, 71, -3.5],
  [326, 72, -15],
];

/** Means -2.28, -2.51 and -4.42; baselines of the first two are not printed. */
const SYMPTOMS: readonly Group[] = [
  [549, 60, -20],
  [364, 60, 10],
  [304, 60, 15],
];
const ACTIVITY: readonly Group[] = [
  [452, 70, -15],
  [314, 70, -2.5],
  [451, 70, 10],
];
const IMPACTS: readonly Group[] = [
  [503, 41.3, 10],
  [466, 41.4, -20],
  [248, 41.4, -4.4],
];

const PRINTED = [
  ['six-minute-walk-distance', WALKS, '22.8', '53.6', 3.014],
  ['sgrq-total', TOTALS, '-3.5', '9.9', 0.557],
  ['sgrq-symptoms', SYMPTOMS, '-2.3', '16.2', 0.911],
  ['sgrq-activity', ACTIVITY, '-2.5', '10.8', 0.607],
  ['sgrq-impacts', IMPACTS, '-4.4', '13.4', 0.754],
] as const;

describe('six-minute walk and SGRQ of 1217 people', () => {
  let report: ReportShown;
  beforeAll(async () => {
    const [totals, symptoms, activity, impacts] = [TOTALS, SYMPTOMS, ACTIVITY, IMPACTS].map(peopleOf);
    const sgrq = (person: number, end: 'baseline' | 'discharge') => ({
      questionnaires: [
        typedScores(
          'st-georges-respiratory-questionnaire',
          {
            'sgrq-total': totals?.[person]?.[end] ?? Number.NaN,
            'sgrq-symptoms': symptoms?.[person]?.[end] ?? Number.NaN,
            'sgrq-activity': activity?.[person]?.[end] ?? Number.NaN,
            'sgrq-impacts': impacts?.[person]?.[end] ?? Number.NaN,
          },
          'standard',
        ),
      ],
    });
    const members = peopleOf(WALKS).map(({ baseline, discharge }, person) => ({
      baseline: { ...sixMinuteWalk(baseline), ...sgrq(person, 'baseline') },
      discharge: { ...sixMinuteWalk(discharge), ...sgrq(person, 'discharge') },
    }));
    report = await reportOnCohort(members);
  });

  it.each(PRINTED)(
    '%s is constructed with the printed mean and SD of change',
    (_measure, groups, mean, sd) => {
      const { change } = momentsOfGroups(groups);
      expect(change.n).toBe(1217);
      expectPrinted(change.mean, mean);
      expectPrinted(change.sd, sd);
    },
  );

  it.each(PRINTED)(
    '%s has the printed change and the interval it makes',
    (measure, _groups, mean, sd, byHand) => {
      const { change } = outcomeOf(report, measure).likeForLike;
      expect(change.n).toBe(1217);
      expectPrinted(change.mean, mean);
      expectPrinted(change.sd, sd);
      expectWithin(halfWidth(change.interval), byHand, 0.003);
    },
  );

  it.each([
    ['six-minute-walk-distance', ['348.0', '95.1'], ['370.8', '96.2']],
    ['sgrq-total', ['56.5', '13.0'], ['53.0', '12.7']],
  ] as const)('%s has the printed means and SDs at both ends', (measure, before, after) => {
    const { baseline, discharge } = outcomeOf(report, measure).likeForLike;
    expectPrinted(baseline.mean, before[0]);
    expectPrinted(baseline.sd, before[1]);
    expectPrinted(discharge.mean, after[0]);
    expectPrinted(discharge.sd, after[1]);
  });

  it('gives a change of the impacts that the rounded means do not give', () => {
    const { baseline, discharge, change } = outcomeOf(report, 'sgrq-impacts').likeForLike;
    expectPrinted(baseline.mean, '41.4');
    expectPrinted(discharge.mean, '36.9');
    // 36.9 less 41.4 is -4.5.
    expectPrinted(change.mean, '-4.4');
  });

  it('judges each person and not the mean, which is below both thresholds', () => {
    // Walks: 25 + 163 + 129 gained 30 m or more. Totals: 282 + 326 fell by 4 points or more, 126 by 3.5.
    expect(outcomeOf(report, 'six-minute-walk-distance').likeForLike.midReached?.numerator).toBe(317);
    expect(outcomeOf(report, 'sgrq-total').likeForLike.midReached?.numerator).toBe(608);
  });
});
