import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aReferralBody } from '../../support/entries.js';
import { expectProblem, itemsOf } from '../../support/response.js';
import {
  created,
  givenAssessment,
  givenClosedWithOffer,
  givenPatient,
  givenReferral,
  givenSession,
} from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const at = (id: string, path = '') => `/api/v1/referrals/${id}${path}`;
const lastOf = async (id: string) => itemsOf(await app.as('clinician').get(at(id, '/history'))).at(-1);
const lastEvent = async () => itemsOf(await app.as('lead').get('/api/v1/audit-events?limit=1'))[0];

describe('a triage decision', () => {
  const correct = (id: string, triage: object | null, reason = 'Another letter') =>
    app.as('clinician').put(at(id, '/triage'), { reason, triage });

  it('is corrected with a reason, and the former one stays readable', async () => {
    const { referralId } = await givenClosedWithOffer(app);
    const triage = { decision: 'redirected', decidedOn: '2026-04-06', reason: 'Lives elsewhere' };
    const response = await correct(referralId, triage);
    expect(response.status, response.text).toBe(200);
    expect(response.body).toMatchObject({ triage, version: 5 });
    expect(await lastOf(referralId)).toMatchObject({
      reason: 'Another letter',
      changedBy: { name: 'Test clinician' },
      changes: [
        { field: 'triage.decision', former: 'accepted', present: 'redirected' },
        { field: 'triage.decidedOn', former: '2026-04-03', present: '2026-04-06' },
        { field: 'triage.reason', former: null, present: 'Lives elsewhere' },
      ],
    });
  });

  it('is taken back where it was made of another referral, and can then be made', async () => {
    const id = await givenReferral(app);
    const decision = { decision: 'accepted', decidedOn: '2026-04-03' };
    await created(app, at(id, '/triage'), decision);
    expect((await correct(id, null)).body).toMatchObject({ triage: null, stage: 'awaiting-triage' });
    await created(app, at(id, '/triage'), decision);
  });

  it('is told to the trail with its reason', async () => {
    const { referralId } = await givenClosedWithOffer(app);
    await correct(referralId, { decision: 'accepted', decidedOn: '2026-04-04' }, 'Wrong day');
    expect(await lastEvent()).toMatchObject({
      action: 'triage-corrected',
      referralId,
      details: { reason: 'Wrong day', changes: { triagedOn: ['2026-04-03', '2026-04-04'] } },
    });
  });

  it('keeps its rules', async () => {
    const { referralId } = await givenClosedWithOffer(app);
    const before = await app.countRows();
    const early = await correct(referralId, { decision: 'not-suitable', decidedOn: '2026-04-01' });
    const [type, pointers] = ['rules-broken', ['/triage/decidedOn', '/triage/reason']];
    expectProblem(early, { status: 422, type, pointers });
    expect(await app.countRows()).toEqual(before);
  });

  it('that was never made cannot be corrected', async () => {
    const response = await correct(await givenReferral(app), null);
    expectProblem(response, { status: 409, type: 'not-triaged' });
  });
});

describe('an offer', () => {
  const correct = (id: string, offerId: string, changes: object = {}) =>
    app.as('admin').put(at(id, `/offers/${offerId}`), {
      reason: 'Rang again',
      offer: { kind: 'assessment', offeredOn: '2026-04-07', response: 'accepted', ...changes },
    });

  it('is corrected with a reason, and the former one stays readable', async () => {
    const { referralId, offerId } = await givenClosedWithOffer(app);
    const response = await correct(referralId, offerId, { response: 'declined', respondedOn: '2026-04-09' });
    expect(response.status, response.text).toBe(200);
    expect(response.body).toMatchObject({
      offers: [{ id: offerId, offeredOn: '2026-04-07', response: 'declined', respondedOn: '2026-04-09' }],
    });
    expect(await lastOf(referralId)).toMatchObject({
      reason: 'Rang again',
      changes: [
        { field: `offers.${offerId}.response`, former: 'accepted', present: 'declined' },
        { field: `offers.${offerId}.respondedOn`, former: null, present: '2026-04-09' },
      ],
    });
  });

  it('keeps its rules', async () => {
    const { referralId, offerId } = await givenClosedWithOffer(app);
    const response = await correct(referralId, offerId, { respondedOn: '2026-04-06' });
    const pointers = ['/offer/respondedOn'];
    expectProblem(response, { status: 422, type: 'rules-broken', pointers, codes: ['out-of-order'] });
  });

  it('of another referral is not found', async () => {
    const { offerId } = await givenClosedWithOffer(app);
    const response = await correct(await givenReferral(app), offerId);
    expectProblem(response, { status: 404, type: 'not-found' });
  });
});

describe('a closure', () => {
  const correct = (id: string, closure: object | null, reason = 'Misread the form') =>
    app.as('admin').put(at(id, '/closure'), { reason, closure });

  it('is corrected with a reason, and the former one stays readable', async () => {
    const { referralId } = await givenClosedWithOffer(app);
    const closure = { closedOn: '2026-07-02', reason: 'moved-away', note: 'To the north.' };
    const response = await correct(referralId, closure);
    expect(response.status, response.text).toBe(200);
    expect(response.body).toMatchObject({ closure, stage: 'closed' });
    expect(await lastOf(referralId)).toMatchObject({
      reason: 'Misread the form',
      changes: [
        { field: 'closure.closedOn', former: '2026-07-01', present: '2026-07-02' },
        { field: 'closure.reason', former: 'completed', present: 'moved-away' },
        { field: 'closure.note', former: null, present: 'To the north.' },
      ],
    });
  });

  it('is opened again, and leaves the plan that was given', async () => {
    const id = await givenReferral(app);
    const ending = { closedOn: '2026-07-01', reason: 'no-reply', exercisePlanGivenOn: '2026-06-30' };
    await created(app, at(id, '/closure'), ending);
    const response = await correct(id, null, 'Rang after all');
    expect(response.body).toMatchObject({
      closure: null,
      stage: 'awaiting-triage',
      exercisePlanGivenOn: '2026-06-30',
    });
    expect(await lastEvent()).toMatchObject({ action: 'referral-reopened', referralId: id });
    await created(app, at(id, '/closure'), { closedOn: '2026-07-05', reason: 'declined' });
  });

  it('is not opened again beside another open referral, which is named', async () => {
    const patientId = await givenPatient(app);
    const body = aReferralBody(patientId, app.siteId);
    const first = await created(app, '/api/v1/referrals', body);
    await created(app, at(first, '/closure'), { closedOn: '2026-07-01', reason: 'completed' });
    const second = await created(app, '/api/v1/referrals', { ...body, receivedOn: '2026-08-01' });
    const response = await correct(first, null);
    expectProblem(response, { status: 409, type: 'referral-already-open' });
    expect(response.body).toMatchObject({ existingId: second });
  });

  it('is not moved before the last assessment', async () => {
    const id = await givenReferral(app);
    await givenAssessment(app, id, { assessedOn: '2026-06-20' });
    await created(app, at(id, '/closure'), { closedOn: '2026-07-01', reason: 'completed' });
    const response = await correct(id, { closedOn: '2026-06-19', reason: 'completed' });
    const pointers = ['/closure/closedOn'];
    expectProblem(response, { status: 422, type: 'rules-broken', pointers, codes: ['out-of-order'] });
  });

  it('that was never made cannot be corrected', async () => {
    expectProblem(await correct(await givenReferral(app), null), { status: 409, type: 'not-closed' });
  });
});

describe('a session', () => {
  const correct = (id: string, changes: object) =>
    app.as('admin').patch(`/api/v1/sessions/${id}`, { reason: 'Wrong class', changes });
  const register = async (sessionId: string, referralId: string) =>
    app.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, {
      attendances: [{ referralId, outcome: 'attended' }],
    });

  it('is corrected with a reason, keeps its register, and its former state stays readable', async () => {
    const [id, referralId] = [await givenSession(app), await givenReferral(app)];
    await register(id, referralId);
    const changes = {
      heldOn: '2026-05-06',
      siteId: app.secondSiteId,
      mode: 'home',
      isSupervised: false,
    };
    const response = await correct(id, changes);
    expect(response.status, response.text).toBe(200);
    const shown = { ...changes, version: 3, attendances: [{ referralId, outcome: 'attended' }] };
    expect(response.body).toMatchObject(shown);
    expect((await app.as('admin').get(`/api/v1/sessions/${id}`)).body).toMatchObject(shown);
    expect(itemsOf(await app.as('admin').get(`/api/v1/sessions/${id}/history`)).at(-1)).toMatchObject({
      reason: 'Wrong class',
      changedBy: { name: 'Test admin' },
      changes: [
        { field: 'siteId', former: app.siteId, present: app.secondSiteId },
        { field: 'heldOn', former: '2026-05-05', present: '2026-05-06' },
        { field: 'mode', former: 'centre', present: 'home' },
        { field: 'isSupervised', former: true, present: false },
      ],
    });
  });

  it('that is made unsupervised is no start any more', async () => {
    const [id, referralId] = [await givenSession(app, { heldOn: '2026-11-20' }), await givenReferral(app)];
    await register(id, referralId);
    expect((await app.as('admin').get(at(referralId))).body).toMatchObject({ stage: 'in-programme' });
    await correct(id, { isSupervised: false });
    expect((await app.as('admin').get(at(referralId))).body).toMatchObject({ stage: 'awaiting-triage' });
  });

  it.each([
    ['before somebody on its register was referred', '2026-04-01', 'before-receipt'],
    ['after the referral of somebody on its register was closed', '2026-07-02', 'after-closure'],
    ['into the future, when somebody has attended', '2026-11-26', 'in-the-future'],
  ])('is not moved %s', async (_name, heldOn, code) => {
    const [id, referralId] = [await givenSession(app), await givenReferral(app)];
    await register(id, referralId);
    if (code === 'after-closure') {
      await created(app, at(referralId, '/closure'), { closedOn: '2026-07-01', reason: 'completed' });
    }
    const before = await app.countRows();
    const response = await correct(id, { heldOn });
    const pointers = ['/changes/heldOn'];
    expectProblem(response, { status: 422, type: 'rules-broken', pointers, codes: [code] });
    expect(await app.countRows()).toEqual(before);
  });

  it('is not moved to a site of another team', async () => {
    const response = await correct(await givenSession(app), { siteId: app.otherTeam.siteId });
    expectProblem(response, { status: 422, type: 'rules-broken', pointers: ['/changes/siteId'] });
  });
});
