import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { outcomesOfReferral } from '../../support/both-ends.js';
import { reportOf } from '../../support/report.js';
import { figuresIn, said } from '../../support/reported.js';
import { asRecord, asRecords } from '../../support/response.js';
import { created, givenAssessment, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/** What was supervised, what was not and what a person only reports are three things, and never added up. */
describe('sessions of a home programme', () => {
  let service: TestApp;
  let referralId = '';
  beforeEach(async () => {
    service = await startApp();
    const changes = { deliveryMode: 'home', plannedSessions: 4, plannedWeeks: 2 };
    referralId = await givenReferral(service, changes);
    await givenAssessment(service, referralId);
  });
  afterEach(() => service.close());

  const attend = async (heldOn: string, isSupervised: boolean, outcome = 'attended'): Promise<void> => {
    const mode = isSupervised ? 'remote' : 'home';
    const session = await givenSession(service, { heldOn, mode, isSupervised });
    const register = { attendances: [{ referralId, outcome }] };
    const response = await service.as('admin').put(`/api/v1/sessions/${session}/attendances`, register);
    expect(response.status, response.text).toBe(200);
  };
  const report = async (weekStartingOn: string, sessionsReported: number): Promise<void> => {
    const path = `/api/v1/referrals/${referralId}/diary-weeks`;
    const response = await service.as('clinician').post(path, { weekStartingOn, sessionsReported });
    expect(response.status, response.text).toBe(201);
  };
  const figures = async (): Promise<(id: string) => string> => {
    const quarter = await reportOf(service.as('lead'), 'period=2026-27-Q1');
    const all = figuresIn([quarter['indicators'], quarter['completion'], quarter['uptake']]);
    return (id) => said(all.find((figure) => figure.id === id));
  };

  it('are shown apart in the outcomes', async () => {
    await attend('2026-05-04', true);
    await attend('2026-05-05', true, 'did-not-attend');
    await attend('2026-05-06', true, 'cancelled-by-service');
    await attend('2026-05-07', false);
    await attend('2026-05-08', false, 'did-not-attend');
    await report('2026-05-04', 6);
    await report('2026-05-11', 0);
    const { sessions } = await outcomesOfReferral(service, referralId);
    // Expected are the four planned less the one that the service cancelled; a week of no sessions is a week in the diary.
    expect(sessions).toEqual({
      supervisedAttended: 1,
      supervisedExpected: 3,
      unsupervisedAttended: 1,
      diaryWeeks: 2,
      diarySessionsReported: 6,
    });
  });

  it('start nothing and count for no attendance where nobody supervised them', async () => {
    for (const day of ['04', '05', '06', '07', '08', '11', '12', '13', '14'])
      await attend(`2026-05-${day}`, false);
    await report('2026-05-04', 21);
    const outcomes = await outcomesOfReferral(service, referralId);
    expect(outcomes).toMatchObject({
      stage: 'awaiting-start',
      sessions: { supervisedAttended: 0, supervisedExpected: 4, unsupervisedAttended: 9 },
    });
    const figure = await figures();
    // Not started after 237 days: day 90 has passed, while a start as such is still possible.
    expect(figure('uptake')).toBe('0 of 0, 1 open');
    expect(figure('started-within-90-days')).toBe('0 of 1');
    expect(figure('completion.of-started.session-count')).toBe('0 of 0');
  });

  it('count from the first supervised one, and it alone', async () => {
    await attend('2026-05-01', false);
    await attend('2026-05-11', true);
    const quarter = await reportOf(service.as('lead'), 'period=2026-27-Q1');
    const wait = asRecords(quarter['waits']).find(({ from, to }) => from === 'receipt' && to === 'start');
    // 2 April to 11 May: 28 + 11 days.
    expect(asRecord(wait?.['daysOfThoseWhoReachedIt'])).toMatchObject({ n: 1, median: 39 });
  });

  it('make no completion of eight sessions out of seven, whatever was done without supervision', async () => {
    const supervised = ['04', '05', '06', '07', '11', '12', '13'];
    for (const day of supervised) await attend(`2026-05-${day}`, true);
    await attend('2026-05-14', false);
    await report('2026-05-11', 7);
    await created(service, `/api/v1/referrals/${referralId}/closure`, {
      closedOn: '2026-05-29',
      reason: 'completed',
    });
    expect((await figures())('completion.of-started.session-count')).toBe('0 of 1');
  });

  it('are marked where a test was done at home, and not compared with one of a course', async () => {
    const home = await givenReferral(service, { deliveryMode: 'home' });
    const stand = (place: string, repetitions: number) => ({
      walkTests: [],
      questionnaires: [],
      sitToStands: [{ test: 'one-minute-sit-to-stand', place, repetitions }],
    });
    await givenAssessment(service, home, stand('course', 15));
    const discharge = { timepoint: 'discharge', assessedOn: '2026-06-22' };
    await givenAssessment(service, home, { ...discharge, ...stand('home', 20) });
    const outcomes = await outcomesOfReferral(service, home);
    expect(outcomes['measures']).toMatchObject([
      {
        isLikeForLike: false,
        differences: ['place course at baseline, home at discharge'],
        class: 'improved',
      },
    ]);
    expect(asRecords(outcomes['cautions']).map(({ id }) => id)).toEqual(
      expect.arrayContaining(['done-at-home', 'conditions-differ']),
    );
  });
});
