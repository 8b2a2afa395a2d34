// The quarter of tests/support/worked-quarter.ts, counted on paper. Every expectation has its working beside it.
import { describe, expect, it } from 'vitest';
import { chooseThresholds } from '../../../src/domain/change/choose-threshold.js';
import { MEASURES } from '../../../src/domain/measures/catalogue.js';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { openFigure } from '../../../src/reports/quarterly/open-figure.js';
import { indicatorFigure, leftOut, outcomesOf, said } from '../../support/reported.js';
import { AT_THE_THRESHOLD, WORKED_INPUT } from '../../support/worked-quarter.js';

const report = buildQuarterlyReport(WORKED_INPUT);

/** Left out of what asks for a start: R14, R06 and R18. */
const LEFT_EARLY = { 'registered-in-error': 1, 'died-before-start': 1, 'moved-away-before-start': 1 };
/** Left out of what asks for starters discharged: R14; R06, R07 and R18. */
const NO_STARTERS = { 'registered-in-error': 1, 'did-not-start': 3 };

describe('cohorts of the worked quarter', () => {
  it('counts referrals, people, registrations in error and who is not closed', () => {
    const { referral, start, discharge } = report.cohorts;
    // Received: R01 to R13, R17, R18, R19 and R24 = 17, R14 in error; R03 and R11, R07 and R24 are one person each.
    // Not closed: R08, R09, R10, R11, R19, R24.
    expect([referral.referrals, referral.people, referral.registeredInError]).toEqual([17, 15, 1]);
    expect(said(referral.notClosed)).toBe('6 of 17');
    // Started: R01, R03, R04, R05, R08, R09, R12, R13, R17; R02 on 1 July is of the next quarter.
    expect([start.referrals, start.people, said(start.notClosed)]).toEqual([9, 9, '2 of 9']);
    // Discharged: R03 to R07, R15 to R18, R20 to R23 = 13; R14 in error.
    expect([discharge.referrals, discharge.registeredInError]).toEqual([13, 1]);
    expect(said(discharge.notClosed)).toBe('0 of 13');
  });

  it('is provisional, and says by how many', () => {
    expect(report.provisional).toEqual({
      isProvisional: true,
      isPeriodOver: true,
      notes: ['referral cohort: 6 of 17 still open', 'start cohort: 2 of 9 still open'],
    });
  });

  it('counts referrals by source, pathway and diagnosis', () => {
    expect(report.referrals.bySource.map((each) => [each.title, said(each)])).toEqual([
      ['General practice', '14 of 17'],
      ['Hospital ward', '3 of 17'],
    ]);
    expect(report.referrals.byPathway.map(said)).toEqual(['14 of 17', '3 of 17']);
    expect(report.referrals.byDiagnosis.map((each) => [each.title, said(each)])).toEqual([
      ['COPD', '17 of 17'],
    ]);
  });
});

describe('uptake and waits of the worked quarter', () => {
  it('counts those assessed and started, of those decided', () => {
    // Assessed: all but R06 (died), R19 (not suitable), R10 and R24 (waiting); R18 before the move. R03 and R11 are one
    // person.
    expect(said(report.uptake.assessed)).toBe('13 of 14, 2 open');
    expect(report.uptake.assessed.people).toEqual({ numerator: 12, denominator: 13 });
    expect(leftOut(report.uptake.assessed)).toEqual({ 'registered-in-error': 1, 'died-before-start': 1 });
    // Started: R01 to R05, R08, R09, R12, R13, R17 = 10; R07 declined, R19 not suitable; R10, R11 and R24 wait.
    expect(said(report.uptake.started)).toBe('10 of 12, 3 open');
    expect(leftOut(report.uptake.started)).toEqual(LEFT_EARLY);
    // Bounds: 10 of 15 and 13 of 15.
    expect(report.uptake.started.bounds?.worst).toBeCloseTo(66.667, 3);
    expect(report.uptake.started.bounds?.best).toBeCloseTo(86.667, 3);
  });

  it('summarises waits of those who reached the event and counts the others', () => {
    const [assessment, start, hospitalAssessment, hospitalStart] = report.waits;
    // Days: 7 x 7 (R02 R03 R04 R05 R12 R17 R18), 9 9 (R01 R08), 10 10 (R07 R13), 11 (R09), 14 (R11).
    // Thirteen: the seventh is the median, the fourth and the tenth are the quartiles.
    expect(assessment?.daysOfThoseWhoReachedIt).toMatchObject({
      n: 13,
      median: 7,
      lowerQuartile: 7,
      upperQuartile: 10,
    });
    // R10 and R24 wait; R06 and R19 left. From 10 June to 20 September: 20 + 31 + 31 + 20 = 102 days.
    expect(said(assessment?.reached)).toBe('13 of 17');
    expect(said(assessment?.stillWaiting)).toBe('2 of 17');
    expect(said(assessment?.left)).toBe('2 of 17');
    expect(assessment?.longestStillWaitingDays).toBe(102);
    // Days: 14 18 24 24 26 28 32 63 90 91. Median 27; quartiles 24 and 32 + 0.75 x 31 = 55.25.
    expect(start?.daysOfThoseWhoReachedIt).toMatchObject({
      n: 10,
      median: 27,
      lowerQuartile: 24,
      upperQuartile: 55.25,
    });
    expect([said(start?.stillWaiting), said(start?.left)]).toEqual(['3 of 17', '4 of 17']);
    expect(start?.longestStillWaitingDays).toBe(102);
    // From hospital discharge: R12 11 and 28 days, R13 8 and 30 days.
    expect(hospitalAssessment?.daysOfThoseWhoReachedIt).toMatchObject({ n: 2, median: 9.5 });
    expect(hospitalStart?.daysOfThoseWhoReachedIt).toMatchObject({ n: 2, median: 29 });
    expect(leftOut(hospitalStart?.reached)).toEqual({ 'registered-in-error': 1, 'wait-not-applicable': 15 });
  });
});

describe('completion of the worked quarter', () => {
  it.each([
    // Of started (R01 R03 R04 R05 R08 R12 R13 R17 decided, R09 open): who completed is named.
    // assessment: R01 R03 R04 R12 R13. sessions: R01 R03 R08 R12 R13. both: R01 R03 R12 R13. count: R01 R03 R04 R08 R12.
    // Without R05 (died) and R17 (transferred) two fewer are in the denominator.
    // Of assessed: R02 completes by all four, R07 by none, R11 is open, R18 is left out. Of referred: R19 did not complete,
    // R10 and R24 are open too, R06 is left out.
    [
      'assessment',
      '5 of 8, 1 open',
      '5 of 6, 1 open',
      '6 of 10, 2 open',
      '6 of 8, 2 open',
      '6 of 11, 4 open',
    ],
    ['sessions', '5 of 8, 1 open', '5 of 6, 1 open', '6 of 10, 2 open', '6 of 8, 2 open', '6 of 11, 4 open'],
    [
      'sessions-and-assessment',
      '4 of 8, 1 open',
      '4 of 6, 1 open',
      '5 of 10, 2 open',
      '5 of 8, 2 open',
      '5 of 11, 4 open',
    ],
    [
      'session-count',
      '5 of 8, 1 open',
      '5 of 6, 1 open',
      '6 of 10, 2 open',
      '6 of 8, 2 open',
      '6 of 11, 4 open',
    ],
  ])('by %s', (reading, ofStarted, startedWithout, ofAssessed, assessedWithout, ofReferred) => {
    const row = report.completion.find((each) => each.reading === reading);
    const [started, assessed, referred] = row?.cells ?? [];
    expect(said(started?.all)).toBe(ofStarted);
    expect(said(started?.withoutDeathsAndMoves)).toBe(startedWithout);
    expect(said(assessed?.all)).toBe(ofAssessed);
    expect(said(assessed?.withoutDeathsAndMoves)).toBe(assessedWithout);
    expect(said(referred?.all)).toBe(ofReferred);
    expect(row?.isHeadline).toBe(reading === 'sessions-and-assessment');
  });

  it('prints whom each denominator left out', () => {
    const [started, assessed, referred] = report.completion[0]?.cells ?? [];
    expect(leftOut(started?.all)).toEqual({});
    expect(leftOut(started?.withoutDeathsAndMoves)).toEqual({
      'died-after-start': 1,
      'transferred-after-start': 1,
    });
    expect(leftOut(assessed?.all)).toEqual({
      'registered-in-error': 1,
      'moved-away-before-start': 1,
      'not-assessed': 4,
    });
    expect(leftOut(referred?.all)).toEqual(LEFT_EARLY);
  });

  it('bounds the share of those started by the open case: 4 of 9 to 5 of 9', () => {
    const headline = report.completion.find((each) => each.isHeadline)?.cells[0]?.all;
    expect(headline?.percentage).toBe(50);
    expect(headline?.bounds?.worst).toBeCloseTo(44.444, 3);
    expect(headline?.bounds?.best).toBeCloseTo(55.556, 3);
  });

  it('names the reasons: R06, R07, R18 and R19 before a start; R04, R05, R08 and R17 after it', () => {
    expect(report.reasons.notStarting.map((each) => [each.id, said(each)])).toEqual([
      ['not-started.declined', '1 of 4'],
      ['not-started.moved-away', '1 of 4'],
      ['not-started.died', '1 of 4'],
      ['not-started.triaged-not-suitable', '1 of 4'],
    ]);
    expect(report.reasons.notCompleting.map((each) => [each.id, said(each)])).toEqual([
      ['not-completed.completed', '1 of 4'],
      ['not-completed.transferred', '1 of 4'],
      ['not-completed.died', '1 of 4'],
      ['not-completed.not-closed', '1 of 4'],
    ]);
  });
});

describe('indicators of the worked quarter', () => {
  it.each([
    // R01 (day 90), R03, R04, R05, R08, R09, R12, R13, R17 in time; R02 (day 91), R07 (declined), R19 (not suitable) and R24
    // (waiting, day 102) not; R10 (day 88) and R11 (day 90) open.
    ['started-within-90-days', '9 of 13, 2 open', LEFT_EARLY],
    ['started-within-90-days-of-those-accepting', '9 of 11, 2 open', { ...LEFT_EARLY, 'did-not-accept': 2 }],
    // Nobody declined a day that was offered.
    ['started-within-90-days-less-chosen-delay', '9 of 13, 2 open', LEFT_EARLY],
    // R12 on day 28, R13 on day 30 of a month of 30 days; R19 has no day of discharge.
    [
      'started-within-28-days-of-hospital-discharge',
      '1 of 2',
      { 'registered-in-error': 1, 'not-after-exacerbation': 14, 'hospital-discharge-not-recorded': 1 },
    ],
    [
      'started-within-one-month-of-hospital-discharge',
      '2 of 2',
      { 'registered-in-error': 1, 'not-after-exacerbation': 14, 'hospital-discharge-not-recorded': 1 },
    ],
    ['uptake', '10 of 12, 3 open', LEFT_EARLY],
    ['assessed-of-referred', '13 of 14, 2 open', { 'registered-in-error': 1, 'died-before-start': 1 }],
    ['completed-of-started', '4 of 8, 1 open', {}],
    [
      'completed-of-assessed',
      '5 of 10, 2 open',
      { 'registered-in-error': 1, 'moved-away-before-start': 1, 'not-assessed': 4 },
    ],
    ['completed-of-referred', '5 of 11, 4 open', LEFT_EARLY],
    // Starters discharged: R03, R04, R05, R15, R16, R17, R20, R21, R22, R23; R06, R07 and R18 did not start.
    // Assessed for discharge: R03, R04, R15, R20, R21, R22.
    ['discharge-assessment-done', '6 of 10', NO_STARTERS],
    // R22 has no breathlessness and no health status.
    ['three-domains-at-both-ends', '5 of 10', NO_STARTERS],
    // R05 at baseline, R15 at discharge and R22 at both ends had none.
    ['practice-walk-done', '7 of 10', NO_STARTERS],
    // R16 has no course length on record; R22 walked on 20 m at discharge.
    ['right-course-length', '8 of 10', NO_STARTERS],
    // Completers: R03 and R20 with a plan, R15 and R22 without.
    ['exercise-plan-given', '2 of 4', { ...NO_STARTERS, 'did-not-complete': 6 }],
    // R13 had four weeks with two sessions held; R09 has three so far; R05 and R17 left within six weeks.
    ['twice-weekly-for-six-weeks', '5 of 6, 1 open', { 'left-within-six-weeks': 2 }],
    // Improved: R03 and R20, each by 2. R04, R15 and R21 not; R05, R16, R17 and R23 were not measured again, R22 never.
    ['mid-reached.cat-total', '2 of 5', { ...NO_STARTERS, 'not-measured': 1, 'no-discharge-result': 4 }],
  ])('%s: %s', (id, expected, exclusions) => {
    const figure = indicatorFigure(report, id);
    expect(said(figure)).toBe(expected);
    expect(leftOut(figure)).toEqual(exclusions);
  });

  it('holds two of them against their targets', () => {
    const judged = report.indicators.filter((row) => row.target !== null);
    expect(judged.map(({ figure, target, isReached }) => [figure.id, target?.percent, isReached])).toEqual([
      ['completed-of-assessed', 70, false],
      ['started-within-90-days', 85, false],
    ]);
    // Of 13 and of 10 nothing is claimed, whatever their limits.
    expect(judged.map(({ isBeyondChance }) => isBeyondChance)).toEqual([null, null]);
  });
});

describe('outcomes of the worked quarter', () => {
  it('walks: R03 +50 and R15 +60 like for like, R04 +40 with another walking aid', () => {
    const walk = outcomesOf(report, 'incremental-shuttle-walk-distance');
    expect([said(walk.pairsOverStarters), said(walk.likeForLikePairsOverStarters)]).toEqual([
      '3 of 10',
      '2 of 10',
    ]);
    const { likeForLike, allPairs } = walk;
    // Baselines 200 and 150: mean 175, SD 25 x sqrt 2. Discharges 250 and 210: mean 230, SD 20 x sqrt 2.
    expect(likeForLike.baseline.mean).toBe(175);
    expect(likeForLike.baseline.sd).toBeCloseTo(35.3553, 4);
    expect(likeForLike.discharge.mean).toBe(230);
    expect(likeForLike.discharge.sd).toBeCloseTo(28.2843, 4);
    // Changes 50 and 60: mean 55, SD 7.0711; t(0.975, 1) = 12.7062, half-width 12.7062 x 5 = 63.531.
    expect(likeForLike.change.mean).toBe(55);
    expect(likeForLike.change.interval?.low).toBeCloseTo(-8.531, 3);
    expect(likeForLike.change.interval?.high).toBeCloseTo(118.531, 3);
    // All: 50, 40, 60: mean 50, SD 10; t(0.975, 2) = 4.30265, half-width 24.841.
    expect(allPairs.change).toMatchObject({ n: 3, mean: 50, sd: 10 });
    expect(allPairs.change.interval?.low).toBeCloseTo(25.159, 3);
    expect(allPairs.change.interval?.high).toBeCloseTo(74.841, 3);
    expect([said(likeForLike.midReached), said(allPairs.midReached)]).toEqual(['2 of 2', '2 of 3']);
    expect(leftOut(likeForLike.midReached)).toEqual({
      ...NO_STARTERS,
      'not-measured': 3,
      'no-discharge-result': 4,
      'not-like-for-like': 1,
    });
    expect(walk.differences).toMatchObject([{ condition: 'walkingAid', name: 'walking aid', pairs: 1 }]);
  });

  it('bounds the walkers who reached the MID by the five of seven not measured again like for like', () => {
    const { responders } = outcomesOf(report, 'incremental-shuttle-walk-distance');
    expect(responders).toMatchObject({ achieved: 2, measured: 2, eligible: 7, best: 100, fewMeasured: true });
    // With a baseline: R03, R04, R05, R15, R16, R17, R23. Worst 2 of 7.
    expect(responders?.worst).toBeCloseTo(28.571, 3);
  });

  it('counts practice walks at each end, and the threshold used beyond its population', () => {
    const walk = outcomesOf(report, 'incremental-shuttle-walk-distance');
    // R05 had none at baseline; R15 none at discharge, but one at baseline.
    expect([said(walk.practiceWalk?.baseline), said(walk.practiceWalk?.discharge)]).toEqual([
      '6 of 7',
      '2 of 3',
    ]);
    expect(walk.practiceWalkDiffers).toBe(1);
    expect(walk.thresholds).toMatchObject([
      { thresholdId: 'iswd-singh-2008', value: 47.5, pairs: 3, pairsOfAnotherDiagnosis: 1 },
    ]);
  });

  it('scores: CAT -2, +1, +3, -2 and -1 make two improved, two with little change, one worse', () => {
    const { likeForLike } = outcomesOf(report, 'cat-total');
    expect([likeForLike.midReached, likeForLike.littleChange, likeForLike.worse].map(said)).toEqual([
      '2 of 5',
      '2 of 5',
      '1 of 5',
    ]);
    // Baselines 20, 25, 15, 20, 20: mean 20, squares 0 + 25 + 25 + 0 + 0 = 50, SD sqrt(12.5) = 3.53553.
    expect(likeForLike.baseline.mean).toBe(20);
    expect(likeForLike.baseline.sd).toBeCloseTo(3.53553, 5);
    // Mean change -1/5; squares 3.24 + 1.44 + 10.24 + 3.24 + 0.64 = 18.8, SD sqrt(4.7) = 2.16795.
    expect(likeForLike.change.mean).toBeCloseTo(-0.2, 9);
    expect(likeForLike.change.sd).toBeCloseTo(2.16795, 5);
    // t(0.975, 4) = 2.776445, half-width 2.776445 x 2.16795 / sqrt(5) = 2.69187.
    expect(likeForLike.change.interval?.low).toBeCloseTo(-2.89187, 4);
    expect(likeForLike.change.interval?.high).toBeCloseTo(2.49187, 4);
  });

  it('breathlessness: one grade is enough (R03, R15 and R20)', () => {
    expect(said(outcomesOf(report, 'mrc-dyspnoea').likeForLike.midReached)).toBe('3 of 5');
  });

  it('puts every measure with a threshold to that test; R03 is the one of shuttles, of which none makes 47.5 m', () => {
    const judged = MEASURES.filter(
      (measure) => chooseThresholds(measure, 'copd', WORKED_INPUT.settings).improvement !== null,
    ).map(({ id }) => id);
    const tested = AT_THE_THRESHOLD.map(([measureId]) => measureId);
    expect(judged.filter((id) => !tested.includes(id))).toEqual(['incremental-shuttle-walk-distance']);
  });

  it('six-minute walks: R20 +30 and R21 +29 like for like, R22 +100 on another course', () => {
    const walk = outcomesOf(report, 'six-minute-walk-distance');
    expect(said(walk.pairsOverStarters)).toBe('3 of 10');
    expect([said(walk.likeForLike.midReached), said(walk.allPairs.midReached)]).toEqual(['1 of 2', '2 of 3']);
    // Not measured: R03, R04, R05, R15, R16, R17, R23.
    expect(leftOut(walk.likeForLike.midReached)).toEqual({
      ...NO_STARTERS,
      'not-measured': 7,
      'not-like-for-like': 1,
    });
    expect(walk.differences).toMatchObject([{ condition: 'courseLengthM', name: 'course length', pairs: 1 }]);
    expect([said(walk.practiceWalk?.baseline), said(walk.practiceWalk?.discharge)]).toEqual([
      '2 of 3',
      '2 of 3',
    ]);
  });

  it('endurance walks: R22 at another speed makes no pair', () => {
    const walk = outcomesOf(report, 'endurance-shuttle-walk-time');
    expect(said(walk.pairsOverStarters)).toBe('2 of 10');
    expect(leftOut(walk.likeForLike.midReached)).toEqual({
      ...NO_STARTERS,
      'not-measured': 7,
      'not-comparable': 1,
    });
  });

  it.each(AT_THE_THRESHOLD.map(([measureId]) => measureId))(
    '%s: a change by the threshold counts (R20), one just short of it does not (R21)',
    (measureId) => {
      const members = openFigure(WORKED_INPUT, `mid-reached.${measureId}`)?.members ?? [];
      const kindOf = (id: string) => members.find(({ referralId }) => referralId === id)?.kind;
      expect([kindOf('R20'), kindOf('R21')]).toEqual(['numerator', 'not-numerator']);
    },
  );

  it('percentage predicted: R03 alone, because R15 is beyond the ages studied', () => {
    // Probst 2012, woman of 70, 160 cm, 70 kg (27.34375 kg/m2): 1449.701 - 821.45 - 155.4765625 = 472.7744 m.
    const walk = report.percentPredicted.find(
      ({ measureId }) => measureId === 'incremental-shuttle-walk-distance',
    );
    expect(walk).toMatchObject({ equationId: 'probst-2012', pairs: 2, beyondAgesStudied: 1 });
    expect(walk?.baseline.n).toBe(1);
    expect(walk?.baseline.mean).toBeCloseTo(42.3035, 3);
    expect(walk?.discharge.mean).toBeCloseTo(52.8793, 3);
  });
});
