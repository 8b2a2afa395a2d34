import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { movingClock } from '../support/moving-clock.js';
import { walkTheLine } from '../support/one-person.js';
import type { WalkedLine } from '../support/one-person.js';
import { asRecord, asRecords, itemsOf } from '../support/response.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

type Json = Readonly<Record<string, unknown>>;

/*
 * One woman from referral to report. She was born on 9 March 1954, is 160 cm tall and 72 years old at both ends. Every
 * expected figure is worked by hand beside it, from what was entered in tests/support/one-person.ts.
 */
describe('the line of one person', () => {
  let service: TestApp;
  let line: WalkedLine;
  let outcomes: Json;
  let report: Json;
  let text = '';

  beforeAll(async () => {
    const clock = movingClock('2026-04-01');
    service = await startApp(clock);
    line = await walkTheLine(service, clock);
    clock.moveTo('2026-07-01');
    const read = async (who: 'clinician' | 'lead', path: string) => {
      const response = await service.as(who).get(`/api/v1/${path}`);
      expect(response.status, response.text).toBe(200);
      return response;
    };
    outcomes = asRecord((await read('clinician', `referrals/${line.referralId}/outcomes`)).body);
    report = asRecord((await read('lead', 'reports/quarterly?period=2026-27-Q1')).body);
    text = (await read('lead', 'reports/quarterly.txt?period=2026-27-Q1')).text.replace(/ +/g, ' ');
  });
  afterAll(() => service.close());

  const measure = (id: string): Json =>
    asRecord(asRecords(outcomes['measures']).find(({ measureId }) => measureId === id));
  const outcomeOf = (id: string): Json =>
    asRecord(asRecords(report['outcomes']).find(({ measureId }) => measureId === id));
  const indicator = (id: string): Json => {
    const figures = asRecords(report['indicators']).map((row) => asRecord(row['figure']));
    return asRecord(figures.find((figure) => figure['id'] === id));
  };

  it('passes through every stage, each derived from what had happened by that day', () => {
    expect(line.stages).toEqual([
      ['registered', 'awaiting-triage'],
      ['triaged', 'awaiting-assessment'],
      // An offer moves nobody on, accepted or not.
      ['offered an assessment', 'awaiting-assessment'],
      ['assessed', 'awaiting-start'],
      // Training at home without supervision is no start.
      ['trained at home', 'awaiting-start'],
      ['first supervised session', 'in-programme'],
      ['third supervised session', 'in-programme'],
      // Three attended and one missed are the four that were planned.
      ['last planned session', 'awaiting-discharge-assessment'],
      ['assessed at discharge', 'awaiting-closure'],
      ['closed', 'closed'],
    ]);
    expect(outcomes).toMatchObject({ stage: 'closed', asAt: '2026-07-01', settingsVersion: 0 });
  });

  it.each([
    // The better of 180 and 200 m; level 5 with all its 7 shuttles is (3 + 4 + 5 + 6 + 7) x 10 = 250 m. 50 >= 47.5.
    ['incremental-shuttle-walk-distance', 200, 250, 50, 50, 'improved'],
    // 21 - 18 = 3: reaching the threshold of 3 counts.
    ['one-minute-sit-to-stand', 18, 21, 3, 3, 'improved'],
    // Items 1-5: 3+2+3+3+2 = 13 and 3+3+3+4+3 = 16. 3/5 = 0.6 >= 0.5.
    ['crq-dyspnoea', 13 / 5, 16 / 5, 0.6, 0.6, 'improved'],
    // Items 8, 11, 15, 17: 4+3+3+4 = 14 and 4+3+4+4 = 15. 1/4 < 0.5.
    ['crq-fatigue', 14 / 4, 15 / 4, 0.25, 0.25, 'little-change'],
    // Items 6, 9, 12, 14, 16, 18, 20: 4+4+5+3+4+4+5 = 29 and 5+4+5+4+4+4+6 = 32. 3/7 = 0.43 < 0.5: 4 points are needed.
    ['crq-emotional-function', 29 / 7, 32 / 7, 3 / 7, 3 / 7, 'little-change'],
    // Items 7, 10, 13, 19: 5+5+4+4 = 18 and 4+5+3+4 = 16. -2/4 = -0.5: falling by the threshold counts as worse.
    ['crq-mastery', 18 / 4, 16 / 4, -0.5, -0.5, 'worse'],
    // 13 + 14 + 29 + 18 = 74 and 16 + 15 + 32 + 16 = 79 over 20 items. 5/20 < 0.5.
    ['crq-total', 74 / 20, 79 / 20, 0.25, 0.25, 'little-change'],
    // 3+3+2+4+3+2+3+2 = 22 and 3+3+2+3+3+2+2+2 = 20. Two points less are an improvement of 2, the threshold itself.
    ['cat-total', 22, 20, -2, 2, 'improved'],
    // Odd items 2+2+1+2+2+1+2 = 12; six answered 1+2+1+2+1+2 = 9, the seventh counts as their mean: 10.5. Just 1.5 less.
    ['hads-anxiety', 12, 10.5, -1.5, 1.5, 'improved'],
    // Even items 1+1+1+1+2+1+1 = 8 and seven times 1 = 7. 1 < 1.5.
    ['hads-depression', 8, 7, -1, 1, 'little-change'],
  ])('judges %s: %d to %d', (id, baseline, discharge, change, improvement, judged) => {
    const found = measure(id);
    expect(asRecord(found['baseline'])['value']).toBeCloseTo(baseline, 12);
    expect(asRecord(found['discharge'])['value']).toBeCloseTo(discharge, 12);
    expect(found['change']).toBeCloseTo(change, 12);
    expect(found['improvement']).toBeCloseTo(improvement, 12);
    expect(found).toMatchObject({
      class: judged,
      isLikeForLike: true,
      differences: [],
      noPairReason: null,
      worseningThreshold: null,
      baseline: { assessmentId: line.baselineId, assessedOn: '2026-04-20' },
      discharge: { assessmentId: line.dischargeId, assessedOn: '2026-06-22' },
    });
  });

  it('shows ten measures and no others', () => {
    expect(asRecords(outcomes['measures'])).toHaveLength(10);
  });

  it('says the share of the predicted walk by the equation of Probst 2012', () => {
    const { baseline, discharge } = measure('incremental-shuttle-walk-distance');
    const [before, after] = [baseline, discharge].map((end) => asRecord(asRecord(end)['predicted']));
    // 1449.701 - 11.735 x 72 - 5.686 x index, with nothing for a woman: 1449.701 - 844.92 = 604.781.
    // Baseline: 68.5 / 1.6^2 = 26.7578125 kg/m2, x 5.686 = 152.1449; 604.781 - 152.1449 = 452.6361 m; 200 / 452.6361.
    expect(before).toMatchObject({ equationId: 'probst-2012', beyondAgesStudied: false, lowerLimit: null });
    expect(before?.['predicted']).toBeCloseTo(452.6361, 4);
    expect(before?.['percentPredicted']).toBeCloseTo(44.1856, 4);
    // Discharge: 67.2 kg and the height of the baseline: 26.25 kg/m2, x 5.686 = 149.2575; 455.5235 m; 250 / 455.5235.
    expect(after?.['predicted']).toBeCloseTo(455.5235, 4);
    expect(after?.['percentPredicted']).toBeCloseTo(54.8819, 4);
  });

  it('keeps what was supervised, what was not and what was reported apart', () => {
    // 4, 11 and 14 May attended of four planned; 27 April and 9 May at home; 3 and 2 sessions in the diary.
    expect(outcomes['sessions']).toEqual({
      supervisedAttended: 3,
      supervisedExpected: 4,
      unsupervisedAttended: 2,
      diaryWeeks: 2,
      diarySessionsReported: 5,
    });
  });

  it('asks for an acknowledgement of the one score in the case range', async () => {
    // HADS anxiety 12 at baseline is 11 or more, 10.5 at discharge is not.
    const asking = asRecords(outcomes['cautions']).filter(
      (caution) => caution['mustBeAcknowledged'] === true,
    );
    expect(asking).toMatchObject([
      { id: 'hads-anxiety-case-range', measureId: 'hads-anxiety', assessmentId: line.baselineId },
    ]);
    const cautions = await service.as('lead').get(`/api/v1/assessments/${line.dischargeId}/cautions`);
    expect(itemsOf(cautions).filter(({ mustBeAcknowledged }) => mustBeAcknowledged === true)).toEqual([]);
  });

  it.each(['referral', 'start', 'discharge'])(
    'counts the person once in the %s cohort, and closed',
    (kind) => {
      const cohort = asRecord(asRecord(report['cohorts'])[kind]);
      expect(cohort).toMatchObject({ referrals: 1, people: 1, registeredInError: 0 });
      expect(cohort['notClosed']).toMatchObject({ numerator: 0, denominator: 1 });
      expect(report['provisional']).toEqual({ isProvisional: false, isPeriodOver: true, notes: [] });
    },
  );

  it('works out both waits', () => {
    // 2 to 20 April is 18 days; 2 April to 4 May 28 + 4 = 32 days. The other clock is for people after an exacerbation.
    const waits = asRecords(report['waits']).map((wait) => [
      wait['from'],
      wait['to'],
      asRecord(wait['daysOfThoseWhoReachedIt'])['n'],
      asRecord(wait['daysOfThoseWhoReachedIt'])['median'],
    ]);
    expect(waits).toEqual([
      ['receipt', 'assessment', 1, 18],
      ['receipt', 'start', 1, 32],
      ['hospital-discharge', 'assessment', 0, null],
      ['hospital-discharge', 'start', 0, null],
    ]);
  });

  it('judges completion by all four readings', () => {
    // Assessed at discharge; 3 of 4 is 75 % exactly, and equality counts; 3 sessions are not 8.
    const readings = asRecords(report['completion']).map((row) => [
      row['reading'],
      ...asRecords(row['cells']).map((cell) => asRecord(cell['all'])['numerator']),
    ]);
    expect(readings).toEqual([
      ['assessment', 1, 1, 1],
      ['sessions', 1, 1, 1],
      ['sessions-and-assessment', 1, 1, 1],
      ['session-count', 0, 0, 0],
    ]);
  });

  it.each([
    ['assessed-of-referred', 1, 1],
    ['uptake', 1, 1],
    ['started-within-90-days', 1, 1],
    ['started-within-90-days-less-chosen-delay', 1, 1],
    ['started-within-90-days-of-those-accepting', 1, 1],
    // Not after an exacerbation: left out of both.
    ['started-within-28-days-of-hospital-discharge', 0, 0],
    ['started-within-one-month-of-hospital-discharge', 0, 0],
    ['completed-of-referred', 1, 1],
    ['completed-of-assessed', 1, 1],
    ['completed-of-started', 1, 1],
    // Two sessions in each of the weeks from 4 and from 11 May: two weeks, not six.
    ['twice-weekly-for-six-weeks', 0, 1],
    ['discharge-assessment-done', 1, 1],
    ['exercise-plan-given', 1, 1],
    ['practice-walk-done', 1, 1],
    ['right-course-length', 1, 1],
    ['three-domains-at-both-ends', 1, 1],
    ['mid-reached.incremental-shuttle-walk-distance', 1, 1],
    ['mid-reached.crq-emotional-function', 0, 1],
    ['mid-reached.hads-anxiety', 1, 1],
  ])('counts %s as %d of %d', (id, numerator, denominator) => {
    // Wilson for 1 of 1 begins at 1 / (1 + 1.959964^2) = 1 / 4.841459 = 20.655 %; for 0 of 1 it ends at 100 - 20.655.
    const percentage = denominator === 0 ? null : 100 * numerator;
    expect(indicator(id)).toMatchObject({ numerator, denominator, open: 0, percentage, bounds: null });
    const { interval } = indicator(id);
    if (denominator === 0) return expect(interval).toBeNull();
    expect(asRecord(interval)['low']).toBeCloseTo(numerator === 1 ? 20.655 : 0, 3);
    expect(asRecord(interval)['high']).toBeCloseTo(numerator === 1 ? 100 : 79.345, 3);
  });

  it('gives the means of the one pair, and nothing that takes two', () => {
    const one = (value: number): Json => ({
      n: 1,
      mean: value,
      sd: null,
      median: value,
      lowerQuartile: value,
      upperQuartile: value,
    });
    expect(outcomeOf('incremental-shuttle-walk-distance')).toMatchObject({
      pairsOverStarters: { numerator: 1, denominator: 1 },
      likeForLike: {
        pairs: 1,
        baseline: one(200),
        discharge: one(250),
        change: { n: 1, mean: 50, sd: null, interval: null, standardisedResponseMean: null },
      },
      practiceWalk: { baseline: { numerator: 1 }, discharge: { numerator: 1 } },
      responders: { achieved: 1, measured: 1, eligible: 1, worst: 100, best: 100, fewMeasured: false },
    });
    expect(outcomeOf('crq-mastery')).toMatchObject({
      likeForLike: { midReached: { numerator: 0 }, littleChange: { numerator: 0 }, worse: { numerator: 1 } },
    });
    const [predicted] = asRecords(report['percentPredicted']);
    expect(predicted).toMatchObject({ equationId: 'probst-2012', pairs: 1, beyondAgesStudied: 0 });
    expect(asRecord(predicted?.['baseline'])['mean']).toBeCloseTo(44.1856, 4);
    expect(asRecord(predicted?.['discharge'])['mean']).toBeCloseTo(54.8819, 4);
  });

  it.each([
    'Marram Coast PR team: 2026-27-Q1 (April to June 2026)',
    '1 April 2026 to 30 June 2026. Data cut 1 July 2026. Settings version 0.',
    'Every referral is closed.',
    'General practice 1 of 1 100.0 % 20.7 to 100.0',
    'of the 1 who reached it: median 32.0 days (quartiles 32.0 to 32.0)',
    'Started within 90 days of receipt 1 of 1 100.0 % 20.7 to 100.0',
    'Twice-weekly sessions for six weeks 0 of 1 0.0 % 0.0 to 79.3',
    'Like for like (headline) 1 200.0 (n/a) 250.0 (n/a) 50.0',
    'Like for like (headline) 1 4.14 (n/a) 4.57 (n/a) 0.43',
    'Like for like (headline) 1 12.0 (n/a) 10.5 (n/a) -1.5',
    'ISWD by probst-2012: baseline 44.2 % (SD n/a), discharge 54.9 % (SD n/a); 1 of 1 like-for-like pairs',
  ])('reads on the terminal: %s', (words) => {
    expect(text).toContain(words);
  });
});
