import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Body } from '../../support/entries.js';
import { expectProblem, itemsOf, walkPages } from '../../support/response.js';
import { created, givenReferral } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp, TestRole } from '../../support/start-app.js';

/** The referral was received on Thursday 2 April 2026; today is Wednesday 25 November 2026. */
describe('a week of the exercise diary', () => {
  let service: TestApp;
  let referralId = '';
  let path = '';
  beforeEach(async () => {
    service = await startApp();
    referralId = await givenReferral(service);
    path = `/api/v1/referrals/${referralId}/diary-weeks`;
  });
  afterEach(() => service.close());

  const record = async (week: Body, who: TestRole | 'other-team' = 'clinician') =>
    service.as(who).post(path, { weekStartingOn: '2026-05-04', sessionsReported: 3, ...week });
  const diary = async () => itemsOf(await service.as('lead').get(path));

  it.each([0, 1, 20, 21])('takes %d sessions', async (sessionsReported) => {
    const response = await record({ sessionsReported });
    expect(response.status, response.text).toBe(201);
    expect(response.body).toEqual({ weekStartingOn: '2026-05-04', sessionsReported });
    expect(await diary()).toEqual([{ weekStartingOn: '2026-05-04', sessionsReported }]);
  });

  it.each<[string, Body, string, string]>([
    ['a Tuesday', { weekStartingOn: '2026-05-05' }, '/weekStartingOn', 'not-a-monday'],
    ['a Sunday', { weekStartingOn: '2026-05-03' }, '/weekStartingOn', 'not-a-monday'],
    ['a Monday to come', { weekStartingOn: '2026-11-30' }, '/weekStartingOn', 'in-the-future'],
    // 2999-12-30 is the last Monday of the calendar that is accepted: no week after it can be worked out.
    ['the end of the calendar', { weekStartingOn: '2999-12-30' }, '/weekStartingOn', 'in-the-future'],
    [
      'the week before that of receipt',
      { weekStartingOn: '2026-03-23' },
      '/weekStartingOn',
      'before-receipt',
    ],
    ['22 sessions', { sessionsReported: 22 }, '/sessionsReported', 'out-of-range'],
    ['less than none', { sessionsReported: -1 }, '/sessionsReported', 'out-of-range'],
  ])('is refused for %s', async (_name, week, pointer, code) => {
    const before = await service.countRows();
    expectProblem(await record(week), {
      status: 422,
      type: 'rules-broken',
      pointers: [pointer],
      codes: [code],
    });
    expect(await service.countRows()).toEqual(before);
  });

  it.each([
    ['the week of receipt, which began before it', '2026-03-30'],
    ['the present week', '2026-11-23'],
  ])('is taken for %s', async (_name, weekStartingOn) => {
    expect((await record({ weekStartingOn })).status).toBe(201);
  });

  it('is taken for the week of closure, and refused for any later one', async () => {
    // 1 July 2026 is a Wednesday.
    const closure = { closedOn: '2026-07-01', reason: 'completed' };
    await created(service, `/api/v1/referrals/${referralId}/closure`, closure);
    expect((await record({ weekStartingOn: '2026-06-29' })).status).toBe(201);
    expectProblem(await record({ weekStartingOn: '2026-07-06' }), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/weekStartingOn'],
      codes: ['after-closure'],
    });
  });

  it('names everything that is wrong at once', async () => {
    expectProblem(await record({ weekStartingOn: '2026-11-27', sessionsReported: 99 }), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/weekStartingOn', '/weekStartingOn', '/sessionsReported'],
      codes: ['in-the-future', 'not-a-monday', 'out-of-range'],
    });
  });

  it.each<[string, Body, string]>([
    ['half a session', { sessionsReported: 2.5 }, '/sessionsReported'],
    ['a number in words', { sessionsReported: '3' }, '/sessionsReported'],
    ['nothing', { sessionsReported: null }, '/sessionsReported'],
    ['an impossible date', { weekStartingOn: '2026-02-30' }, '/weekStartingOn'],
    ['a field that there is not', { supervised: true }, '/supervised'],
  ])('is refused by its shape for %s', async (_name, week, pointer) => {
    expectProblem(await record(week), { status: 400, type: 'malformed-request', pointers: [pointer] });
  });

  it('replaces the former entry of the same week, which the record keeps', async () => {
    await record({ sessionsReported: 3 });
    await record({ weekStartingOn: '2026-05-11', sessionsReported: 1 });
    await record({ sessionsReported: 5 }, 'lead');
    expect(await diary()).toEqual([
      { weekStartingOn: '2026-05-04', sessionsReported: 5 },
      { weekStartingOn: '2026-05-11', sessionsReported: 1 },
    ]);
    const rows = await service.record.connection.reader
      .selectFrom('diary_week')
      .innerJoin('account', 'account.id', 'diary_week.recorded_by')
      .select(['week_starting_on', 'sessions_reported', 'superseded_at', 'role'])
      .where('referral_id', '=', referralId)
      .orderBy('diary_week.id')
      .execute();
    expect(rows.map((row) => Object.values(row))).toEqual([
      ['2026-05-04', 3, TEST_INSTANT, 'clinician'],
      ['2026-05-11', 1, null, 'clinician'],
      ['2026-05-04', 5, null, 'lead'],
    ]);
  });

  it('stands once, even when two people enter it at the same moment', async () => {
    const both = await Promise.all([
      record({ sessionsReported: 2 }),
      record({ sessionsReported: 4 }, 'lead'),
    ]);
    expect(both.map(({ status }) => status)).toEqual([201, 201]);
    expect(await diary()).toHaveLength(1);
  });

  it('is kept by clinicians and leads of the team: to all others there is nothing', async () => {
    for (const who of ['admin', 'commissioner'] as const) {
      expectProblem(await record({}, who), { status: 403, type: 'not-allowed' });
      expectProblem(await service.as(who).get(path), { status: 403, type: 'not-allowed' });
    }
    expectProblem(await record({}, 'other-team'), { status: 404, type: 'not-found' });
    expectProblem(await service.as('other-team').get(path), { status: 404, type: 'not-found' });
    expect(await diary()).toEqual([]);
  });

  it('is read earliest first, page by page', async () => {
    const mondays = ['2026-05-18', '2026-05-04', '2026-06-01', '2026-05-11', '2026-05-25'];
    for (const weekStartingOn of mondays) await record({ weekStartingOn });
    const { rows, pages } = await walkPages((cursor) =>
      service.as('clinician').get(`${path}?limit=2${cursor === null ? '' : `&cursor=${cursor}`}`),
    );
    expect(pages).toBe(3);
    expect(rows.map((row) => row['weekStartingOn'])).toEqual([...mondays].sort());
  });
});
