import { afterAll, beforeAll, expect, it } from 'vitest';
import { aPatient, aReferralBody } from '../../support/entries.js';
import { expectProblem } from '../../support/response.js';
import { created, givenClosedReferral, givenPatient } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const register = (body: object) => app.as('admin').post('/api/v1/referrals', body);

it('answers with the referral, awaiting triage, and its address', async () => {
  const patientId = await givenPatient(app);
  const response = await register(aReferralBody(patientId, app.siteId));
  expect(response.status).toBe(201);
  const { id } = response.body as { id: string };
  expect(response.headers['location']).toBe(`/api/v1/referrals/${id}`);
  expect(response.body).toMatchObject({
    patientId,
    version: 1,
    stage: 'awaiting-triage',
    triage: null,
    offers: [],
    closure: null,
  });
});

it('reads back every field that was given', async () => {
  const patientId = await givenPatient(app);
  const given = aReferralBody(patientId, app.secondSiteId, {
    commissionerId: app.commissionerId,
    source: 'hospital-ward',
    diagnosis: 'bronchiectasis',
    otherConditions: 'Osteoporosis.\nTakes an anticoagulant.',
    pathway: 'after-exacerbation',
    hospitalDischargedOn: '2026-03-30',
    mrcGrade: 4,
    deliveryMode: 'hybrid',
    plannedStartOn: '2026-12-01',
    plannedSessions: 16,
    plannedWeeks: 8,
    exercisePlanGivenOn: '2026-04-02',
  });
  const id = await created(app, '/api/v1/referrals', given, 'clinician');
  const response = await app.as('clinician').get(`/api/v1/referrals/${id}`);
  expect(response.body).toEqual({
    ...given,
    enteredInError: null,
    id,
    version: 1,
    triage: null,
    offers: [],
    closure: null,
    stage: 'awaiting-triage',
  });
});

it('accepts a referral from a ward before the person is at home, but no discharge in the future', async () => {
  const patientId = await givenPatient(app);
  const changes = { pathway: 'after-exacerbation', hospitalDischargedOn: '2026-04-06' };
  expect((await register(aReferralBody(patientId, app.siteId, changes))).status).toBe(201);
});

it('refuses a hospital discharge date on the stable pathway', async () => {
  const patientId = await givenPatient(app);
  const body = aReferralBody(patientId, app.siteId, { hospitalDischargedOn: '2026-04-01' });
  expectProblem(await register(body), {
    status: 422,
    type: 'rules-broken',
    pointers: ['/hospitalDischargedOn'],
    codes: ['not-for-this-pathway'],
  });
});

it('refuses a second open referral of a person, and names the open one', async () => {
  const patientId = await givenPatient(app);
  const existingId = await created(app, '/api/v1/referrals', aReferralBody(patientId, app.siteId));
  const response = await register(aReferralBody(patientId, app.siteId, { receivedOn: '2026-05-01' }));
  expectProblem(response, { status: 409, type: 'referral-already-open' });
  expect(response.body).toMatchObject({ existingId });
});

it('takes a person up again once the former referral is closed', async () => {
  const closedId = await givenClosedReferral(app);
  const { patientId } = (await app.as('lead').get(`/api/v1/referrals/${closedId}`)).body as {
    patientId: string;
  };
  const response = await register(aReferralBody(patientId, app.siteId, { receivedOn: '2026-09-01' }));
  expect(response.status).toBe(201);
  expect((response.body as { id: string }).id).not.toBe(closedId);
});

it('names patient, site and commissioner that the team does not have', async () => {
  const theirPatient = await created(app, '/api/v1/patients', aPatient(), 'other-team');
  const strangers = [
    { changes: { patientId: theirPatient }, pointer: '/patientId' },
    { changes: { siteId: app.otherTeam.siteId }, pointer: '/siteId' },
    { changes: { commissionerId: app.teamId }, pointer: '/commissionerId' },
  ];
  const patientId = await givenPatient(app);
  const before = await app.countRows();
  for (const { changes, pointer } of strangers) {
    const response = await register(aReferralBody(patientId, app.siteId, changes));
    expectProblem(response, { status: 422, type: 'rules-broken', pointers: [pointer] });
  }
  expect(await app.countRows()).toEqual(before);
});
