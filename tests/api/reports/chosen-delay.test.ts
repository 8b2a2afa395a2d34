import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Body } from '../../support/entries.js';
import { asRecord, asRecords, itemsOf } from '../../support/response.js';
import { givenSession, givenTriagedReferral } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/*
 * Received on 2 April 2026 and started on 10 July, day 99. A place on 1 June was declined and the next one, on 29 June, was
 * taken: 28 days that the person chose, so that the start is on day 71 by the second figure.
 */
const QUARTER = 'period=2026-27-Q1';
const ADJUSTED = 'started-within-90-days-less-chosen-delay';

let app: TestApp;
let referralId = '';
beforeAll(async () => {
  app = await startApp();
  referralId = await givenTriagedReferral(app);
  const offers: readonly Body[] = [
    { offeredOn: '2026-05-11', appointmentOn: '2026-06-01', response: 'declined' },
    { offeredOn: '2026-05-18', appointmentOn: '2026-06-29', response: 'accepted' },
  ];
  for (const offer of offers) {
    const path = `/api/v1/referrals/${referralId}/offers`;
    const response = await app.as('lead').post(path, { kind: 'programme', ...offer });
    expect(response.status, response.text).toBe(201);
  }
  const session = await givenSession(app, { heldOn: '2026-07-10' });
  const attendances = [{ referralId, outcome: 'attended' }];
  await app.as('lead').put(`/api/v1/sessions/${session}/attendances`, { attendances });
});
afterAll(() => app.close());

it('a wait is told without pauses first, and less the days that the person chose as a second figure', async () => {
  const report = await app.as('lead').get(`/api/v1/reports/quarterly?${QUARTER}`);
  const figures = asRecords(asRecord(report.body)['indicators']).map((row) => asRecord(row['figure']));
  const said = (id: string) => {
    const { numerator, denominator, open } = figures.find((figure) => figure['id'] === id) ?? {};
    return [numerator, denominator, open];
  };
  expect(said('started-within-90-days')).toEqual([0, 1, 0]);
  expect(said(ADJUSTED)).toEqual([1, 1, 0]);
});

it('the second figure opens to the person, with the days in words', async () => {
  const path = `/api/v1/reports/quarterly/figures/${ADJUSTED}/members?${QUARTER}`;
  const [member] = itemsOf(await app.as('lead').get(path));
  expect(member).toMatchObject({
    referralId,
    kind: 'numerator',
    reason: 'Started on day 99, less 28 that the person chose',
  });
});

it('it stands in the list of indicators with its rule, and has no target unless a team sets one', async () => {
  const listed = itemsOf(await app.as('lead').get('/api/v1/indicators')).find(({ id }) => id === ADJUSTED);
  expect(listed?.['numerator']).toContain('offered and declined');
  const report = await app.as('lead').get(`/api/v1/reports/quarterly?${QUARTER}`);
  const row = asRecords(asRecord(report.body)['indicators']).find(
    ({ figure }) => asRecord(figure)['id'] === ADJUSTED,
  );
  expect(row?.['target']).toBeNull();
});
