import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { movingClock } from '../../support/moving-clock.js';
import { walkTheLine } from '../../support/one-person.js';
import { reportOf } from '../../support/report.js';
import { figuresIn, said } from '../../support/reported.js';
import { asRecord, asRecords } from '../../support/response.js';
import { created, givenReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/*
 * One person as she was seen on earlier days: received 2 April, assessed 20 April, first supervised session 4 May (one of
 * four over four weeks), assessed at discharge 22 June, closed 24 June 2026.
 */
describe('the data cut of a report', () => {
  let service: TestApp;
  beforeAll(async () => {
    const clock = movingClock('2026-04-01');
    service = await startApp(clock);
    await walkTheLine(service, clock);
    clock.moveTo('2026-11-25');
  });
  afterAll(() => service.close());

  const seenOn = async (asAt: string) => {
    const report = await reportOf(service.as('lead'), `period=2026-27-Q1&asAt=${asAt}`);
    const indicators = asRecords(report['indicators']).flatMap((row) => figuresIn(row['figure']));
    const figure = (id: string): string => said(indicators.find((each) => each.id === id));
    return { report, figure };
  };

  it.each([
    // day, assessed, started, completed of started, discharge assessment done, plan given
    ['2026-04-01', '0 of 0', '0 of 0', '0 of 0', '0 of 0', '0 of 0'],
    ['2026-04-02', '0 of 0, 1 open', '0 of 0, 1 open', '0 of 0', '0 of 0', '0 of 0'],
    ['2026-04-19', '0 of 0, 1 open', '0 of 0, 1 open', '0 of 0', '0 of 0', '0 of 0'],
    ['2026-04-20', '1 of 1', '0 of 0, 1 open', '0 of 0', '0 of 0', '0 of 0'],
    // The unsupervised session of 27 April starts nothing.
    ['2026-05-03', '1 of 1', '0 of 0, 1 open', '0 of 0', '0 of 0', '0 of 0'],
    ['2026-05-04', '1 of 1', '1 of 1', '0 of 0, 1 open', '0 of 0', '0 of 0'],
    ['2026-06-21', '1 of 1', '1 of 1', '0 of 0, 1 open', '0 of 0', '0 of 0'],
    ['2026-06-22', '1 of 1', '1 of 1', '1 of 1', '1 of 1', '1 of 1'],
    ['2026-06-30', '1 of 1', '1 of 1', '1 of 1', '1 of 1', '1 of 1'],
  ])('shows what was known at the end of %s', async (day, assessed, started, completed, done, plan) => {
    const { report, figure } = await seenOn(day);
    expect([
      figure('assessed-of-referred'),
      figure('uptake'),
      figure('completed-of-started'),
      figure('discharge-assessment-done'),
      figure('exercise-plan-given'),
    ]).toEqual([assessed, started, completed, done, plan]);
    expect(report).toMatchObject({ asAt: day });
  });

  it('has no outcomes before the discharge assessment, and the whole of them on its day', async () => {
    expect((await seenOn('2026-06-21')).report['outcomes']).toEqual([]);
    const outcomes = asRecords((await seenOn('2026-06-22')).report['outcomes']);
    expect(outcomes).toHaveLength(10);
    expect(asRecord(asRecord(outcomes[0]?.['likeForLike'])['change'])['mean']).toBe(50);
  });

  it('counts somebody who waits among those still waiting, with the days so far', async () => {
    // 2 April to 3 May is 31 days.
    const { report } = await seenOn('2026-05-03');
    const wait = asRecords(report['waits']).find(({ from, to }) => from === 'receipt' && to === 'start');
    expect(wait).toMatchObject({
      daysOfThoseWhoReachedIt: { n: 0, median: null },
      stillWaiting: { numerator: 1, denominator: 1 },
      longestStillWaitingDays: 31,
    });
  });

  it('says what may still move', async () => {
    expect((await seenOn('2026-06-23')).report['provisional']).toEqual({
      isProvisional: true,
      isPeriodOver: false,
      notes: [
        'referral cohort: 1 of 1 still open',
        'start cohort: 1 of 1 still open',
        'discharge cohort: 1 of 1 still open',
      ],
    });
    expect((await seenOn('2026-06-30')).report['provisional']).toEqual({
      isProvisional: false,
      isPeriodOver: true,
      notes: [],
    });
  });

  it('leaves a registration in error out of every cut, whenever the error was found', async () => {
    const referralId = await givenReferral(service, { receivedOn: '2026-04-10' });
    expect(await receivedOn('2026-04-30')).toEqual([2, 0]);
    await created(service, `/api/v1/referrals/${referralId}/closure`, {
      closedOn: '2026-07-20',
      reason: 'registered-in-error',
    });
    expect(await receivedOn('2026-04-30')).toEqual([1, 1]);
  });

  const receivedOn = async (day: string): Promise<readonly unknown[]> => {
    const { report } = await seenOn(day);
    const cohort = asRecord(asRecord(report['cohorts'])['referral']);
    return [cohort['referrals'], cohort['registeredInError']];
  };
});
