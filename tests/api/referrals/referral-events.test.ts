import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectProblem } from '../../support/response.js';
import {
  givenAssessment,
  givenClosedReferral,
  givenReferral,
  givenSession,
  givenTriagedReferral,
} from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

describe('triage', () => {
  const triage = (id: string, changes: object = {}) =>
    app
      .as('clinician')
      .post(`/api/v1/referrals/${id}/triage`, { decision: 'accepted', decidedOn: '2026-04-03', ...changes });

  it('moves the referral on, and sets the grade that the clinician found', async () => {
    const id = await givenReferral(app, { mrcGrade: 2 });
    const response = await triage(id, { mrcGrade: 4 });
    expect(response.status).toBe(201);
    expect(response.body).toMatchObject({
      version: 2,
      stage: 'awaiting-assessment',
      mrcGrade: 4,
      triage: { decision: 'accepted', decidedOn: '2026-04-03', reason: null },
    });
  });

  it('leaves the grade of the referral where none is given', async () => {
    const id = await givenReferral(app, { mrcGrade: 2 });
    expect((await triage(id)).body).toMatchObject({ mrcGrade: 2 });
  });

  it('asks for the reason when the referral is not accepted', async () => {
    const id = await givenReferral(app);
    expectProblem(await triage(id, { decision: 'not-suitable' }), {
      status: 422,
      type: 'rules-broken',
      pointers: ['/reason'],
      codes: ['reason-missing'],
    });
    expect((await triage(id, { decision: 'not-suitable', reason: 'Unstable angina' })).status).toBe(201);
  });

  it('is decided once', async () => {
    expectProblem(await triage(await givenTriagedReferral(app)), { status: 409, type: 'already-triaged' });
  });

  it('is not decided after the closure', async () => {
    expectProblem(await triage(await givenClosedReferral(app)), { status: 409, type: 'already-closed' });
  });
});

describe('an offer', () => {
  const offer = (id: string, changes: object = {}) =>
    app.as('admin').post(`/api/v1/referrals/${id}/offers`, {
      kind: 'assessment',
      offeredOn: '2026-04-07',
      response: 'accepted',
      ...changes,
    });

  it('is added to those that were made, with its appointment', async () => {
    const id = await givenReferral(app);
    await offer(id, { response: 'no-reply' });
    const second = { offeredOn: '2026-04-14', appointmentOn: '2026-12-24', respondedOn: '2026-04-15' };
    const response = await offer(id, second);
    expect(response.status).toBe(201);
    const { offers } = response.body as { offers: unknown };
    expect(offers).toMatchObject([
      { kind: 'assessment', offeredOn: '2026-04-07', response: 'no-reply', respondedOn: null },
      { ...second, kind: 'assessment', response: 'accepted' },
    ]);
  });

  it.each([
    ['a response before the offer', { respondedOn: '2026-04-06' }, '/respondedOn', 'out-of-order'],
    ['an appointment before the offer', { appointmentOn: '2026-04-06' }, '/appointmentOn', 'out-of-order'],
    [
      'the date of a reply that is awaited',
      { response: 'awaiting-reply', respondedOn: '2026-04-08' },
      '/respondedOn',
      'awaiting-reply',
    ],
  ])('is refused with %s', async (_name, changes, pointer, code) => {
    const response = await offer(await givenReferral(app), changes);
    expectProblem(response, { status: 422, type: 'rules-broken', pointers: [pointer], codes: [code] });
  });

  it('is not made after the closure', async () => {
    expectProblem(await offer(await givenClosedReferral(app)), { status: 409, type: 'already-closed' });
  });
});

describe('a closure', () => {
  const close = (id: string, changes: object = {}) =>
    app.as('admin').post(`/api/v1/referrals/${id}/closure`, {
      closedOn: '2026-07-01',
      reason: 'completed',
      note: 'Goes to the leisure centre.',
      ...changes,
    });

  it('ends the referral, with its reason, note and the plan that was given', async () => {
    const response = await close(await givenReferral(app), { exercisePlanGivenOn: '2026-06-30' });
    expect(response.status).toBe(201);
    expect(response.body).toMatchObject({
      stage: 'closed',
      exercisePlanGivenOn: '2026-06-30',
      closure: { closedOn: '2026-07-01', reason: 'completed', note: 'Goes to the leisure centre.' },
    });
  });

  it('leaves a plan that was recorded before where it names none', async () => {
    const id = await givenReferral(app, { exercisePlanGivenOn: '2026-05-01' });
    expect((await close(id)).body).toMatchObject({ exercisePlanGivenOn: '2026-05-01' });
  });

  it('happens once', async () => {
    const id = await givenClosedReferral(app);
    const before = await app.countRows();
    expectProblem(await close(id), { status: 409, type: 'already-closed' });
    expect(await app.countRows()).toEqual(before);
  });

  it('is not before the last assessment', async () => {
    const id = await givenReferral(app);
    await givenAssessment(app, id, { assessedOn: '2026-07-02' });
    expectProblem(await close(id), BEFORE_THE_LAST_EVENT);
  });

  it('is not before the last session attended', async () => {
    const id = await givenReferral(app);
    const sessionId = await givenSession(app, { heldOn: '2026-07-02' });
    const attendances = [{ referralId: id, outcome: 'attended' }];
    await app.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
    expectProblem(await close(id), BEFORE_THE_LAST_EVENT);
  });

  it('may be before a session at which the person was still expected', async () => {
    const id = await givenReferral(app);
    const sessionId = await givenSession(app, { heldOn: '2026-07-02' });
    const attendances = [{ referralId: id, outcome: 'did-not-attend' }];
    await app.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
    expect((await close(id)).status).toBe(201);
  });

  const BEFORE_THE_LAST_EVENT = {
    status: 422,
    type: 'rules-broken',
    pointers: ['/closedOn'],
    codes: ['out-of-order'],
  } as const;
});

it('makes the referral awaiting start once it is assessed', async () => {
  const id = await givenTriagedReferral(app);
  await givenAssessment(app, id);
  const response = await app.as('admin').get(`/api/v1/referrals/${id}`);
  expect(response.body).toMatchObject({ stage: 'awaiting-start' });
});
