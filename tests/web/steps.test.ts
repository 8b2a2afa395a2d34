import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord, asRecords } from '../support/response.js';
import { givenClosedReferral, givenReferral, givenTriagedReferral } from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
let app: TestApp;
let admin: PageClient;
let clinician: PageClient;

beforeAll(async () => {
  app = await startApp();
  admin = await pagesAs(app, 'admin');
  clinician = await pagesAs(app, 'clinician');
});
afterAll(() => app.close());

async function referralOf(id: string) {
  return asRecord((await app.as('lead').get(`/api/v1/referrals/${id}`)).body);
}

function dated(name: string, day: string, month: string, year: string): Readonly<Record<string, string>> {
  return { [`${name}-day`]: day, [`${name}-month`]: month, [`${name}-year`]: year };
}

describe('the triage page', () => {
  it('records a decision, and leads to booking', async () => {
    const id = await givenReferral(app);
    const path = `/referrals/${id}/triage`;
    const fields = {
      decision: 'accepted',
      reason: '',
      mrcGrade: '3',
      ...dated('decidedOn', '24', '11', '2026'),
    };
    const answer = await clinician.submit(path, fields);
    expect([answer.status, answer.headers['location']]).toEqual([303, `/referrals/${id}/offers`]);
    expect(await referralOf(id)).toMatchObject({
      mrcGrade: 3,
      triage: { decision: 'accepted', decidedOn: '2026-11-24', reason: null },
    });
    expect((await clinician.get(path)).text).toContain('Decided already');
    const again = await clinician.submit(`/referrals/${await givenReferral(app)}/triage`, fields, path);
    expect(again.status).toBe(412);
    expect(again.text).toContain('Decided already');
  });

  it('asks why a referral is not accepted, and keeps what was typed', async () => {
    const id = await givenReferral(app);
    const fields = { decision: 'redirected', reason: '', ...dated('decidedOn', '30', '2', '2026') };
    const answer = await clinician.submit(`/referrals/${id}/triage`, fields);
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('href="#field-decidedOn"');
    expect(answer.text).toMatch(/value="redirected" checked/);
    const dateRight = { ...fields, ...dated('decidedOn', '24', '11', '2026') };
    const refused = await clinician.submit(`/referrals/${id}/triage`, dateRight);
    expect(refused.text).toContain('href="#field-reason"');
    expect((await referralOf(id))['triage']).toBeNull();
  });

  it('is not for administrators, and another team has no such referral', async () => {
    const id = await givenReferral(app);
    expect((await admin.get(`/referrals/${id}/triage`)).status).toBe(403);
    expect((await clinician.get('/referrals/01a2183c-f333-7460-94ca-962303c36fcd/triage')).status).toBe(404);
    expect((await clinician.get('/referrals/nobody/triage')).status).toBe(404);
  });
});

describe('the page of offers', () => {
  it('records an offer and then its answer', async () => {
    const id = await givenTriagedReferral(app);
    const path = `/referrals/${id}/offers`;
    const offer = {
      kind: 'assessment',
      ...dated('offeredOn', '20', '11', '2026'),
      ...dated('appointmentOn', '7', '12', '2026'),
    };
    await admin.submit(path, { ...offer, response: 'awaiting-reply' });
    const [made] = asRecords((await referralOf(id))['offers']);
    expect(made).toMatchObject({ kind: 'assessment', offeredOn: '2026-11-20', response: 'awaiting-reply' });
    const page = await admin.get(path);
    expect(page.text).toContain(`?answer=${String(made?.['id'])}`);
    const answering = await admin.get(`${path}?answer=${String(made?.['id'])}`);
    expect(answering.text).toMatch(/name="appointmentOn-day"[^>]*value="7"/);
    await admin.submit(path, { ...offer, response: 'accepted', ...dated('respondedOn', '25', '11', '2026') });
    expect(asRecords((await referralOf(id))['offers'])).toHaveLength(2);
    expect((await admin.get(path)).text).not.toContain('Record the answer');
  });

  it('says what is wrong at the fields', async () => {
    const id = await givenTriagedReferral(app);
    const answer = await admin.submit(`/referrals/${id}/offers`, {
      kind: 'programme',
      response: 'awaiting-reply',
      ...dated('offeredOn', '20', '11', '2026'),
      ...dated('appointmentOn', '19', '11', '2026'),
      ...dated('respondedOn', '21', '11', '2026'),
    });
    expect(answer.status).toBe(422);
    expect(answer.text).toContain('href="#field-appointmentOn"');
    expect(answer.text).toContain('href="#field-respondedOn"');
    expect((await referralOf(id))['offers']).toEqual([]);
  });

  it('offers nothing more where the referral is closed', async () => {
    const id = await givenClosedReferral(app);
    const page = await admin.get(`/referrals/${id}/offers`);
    expect(page.text).toContain('The referral is closed');
    expect(page.text).not.toContain('name="kind"');
  });
});

describe('the page of the planned start', () => {
  it('plans a start, and asks for a reason when the plan is changed', async () => {
    const id = await givenTriagedReferral(app);
    const path = `/referrals/${id}/planned-start`;
    const plan = {
      ...dated('plannedStartOn', '2', '12', '2026'),
      deliveryMode: 'centre',
      plannedSessions: '16',
      plannedWeeks: '8',
    };
    expect((await admin.submit(path, plan)).headers['location']).toBe(`/referrals/${id}`);
    expect(await referralOf(id)).toMatchObject({
      plannedStartOn: '2026-12-02',
      deliveryMode: 'centre',
      plannedSessions: 16,
      plannedWeeks: 8,
    });
    const later = { ...plan, ...dated('plannedStartOn', '9', '12', '2026'), reason: '' };
    expect((await admin.submit(path, later)).text).toContain('href="#field-reason"');
    expect((await admin.submit(path, { ...later, reason: 'The class is full' })).status).toBe(303);
    expect(await referralOf(id)).toMatchObject({ plannedStartOn: '2026-12-09' });
  });

  it('says who changed the referral meanwhile, and keeps what was typed', async () => {
    const id = await givenTriagedReferral(app);
    const plan = {
      ...dated('plannedStartOn', '3', '12', '2026'),
      deliveryMode: '',
      plannedSessions: '',
      plannedWeeks: '',
    };
    await clinician.submit(`/referrals/${id}/offers`, {
      kind: 'programme',
      response: 'awaiting-reply',
      ...dated('offeredOn', '20', '11', '2026'),
    });
    const stale = await admin.submit(`/referrals/${id}/planned-start`, { ...plan, version: '2' });
    expect(stale.status).toBe(412);
    expect(stale.text).toContain('Test clinician, 25 November 2026, 10:00: Offer');
    expect(stale.text).toContain('place in the programme');
    expect(stale.text).toMatch(/name="plannedStartOn-day"[^>]*value="3"/);
    expect((await referralOf(id))['plannedStartOn']).toBeNull();
  });
});
