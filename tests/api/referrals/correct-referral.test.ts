import { afterAll, beforeAll, expect, it } from 'vitest';
import { expectProblem } from '../../support/response.js';
import { created, givenAssessment, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const correct = (id: string, changes: object) =>
  app.as('clinician').patch(`/api/v1/referrals/${id}`, { reason: 'Typed wrongly', changes });

it('changes what is named and leaves the rest', async () => {
  const id = await givenReferral(app, { plannedSessions: 12 });
  const response = await correct(id, { diagnosis: 'asthma', mrcGrade: 3 });
  expect(response.status).toBe(200);
  expect(response.body).toMatchObject({ version: 2, diagnosis: 'asthma', mrcGrade: 3, plannedSessions: 12 });
});

it('takes a field back to "not recorded" with null', async () => {
  const id = await givenReferral(app, { plannedSessions: 12 });
  expect((await correct(id, { plannedSessions: null })).body).toMatchObject({ plannedSessions: null });
});

it('keeps the former state whole, with the reason, the instant and who corrected it', async () => {
  const id = await givenReferral(app, { diagnosis: 'copd' });
  await correct(id, { diagnosis: 'asthma' });
  const versions = await app.record.connection.db
    .selectFrom('referral_version')
    .innerJoin('account', 'account.id', 'referral_version.superseded_by')
    .select(['referral_version.version', 'document', 'reason', 'superseded_at', 'account.display_name'])
    .where('referral_id', '=', id)
    .execute();
  expect(versions).toHaveLength(1);
  const [former] = versions;
  expect(JSON.parse(former?.document ?? '')).toMatchObject({ id, version: 1, diagnosis: 'copd' });
  expect({ ...former, document: null }).toEqual({
    version: 1,
    document: null,
    reason: 'Typed wrongly',
    superseded_at: TEST_INSTANT,
    display_name: 'Test clinician',
  });
});

it('keeps the state before a triage and before a closure', async () => {
  const id = await givenReferral(app);
  const triage = { decision: 'accepted', decidedOn: '2026-04-03', mrcGrade: 4 };
  await created(app, `/api/v1/referrals/${id}/triage`, triage, 'clinician');
  await created(app, `/api/v1/referrals/${id}/closure`, { closedOn: '2026-05-01', reason: 'declined' });
  const versions = await app.record.connection.db
    .selectFrom('referral_version')
    .select(['version', 'reason', 'document'])
    .where('referral_id', '=', id)
    .orderBy('version')
    .execute();
  expect(versions.map(({ version, reason }) => [version, reason])).toEqual([
    [1, 'Triage'],
    [2, 'Closure'],
  ]);
  expect(JSON.parse(versions[0]?.document ?? '')).toMatchObject({ triage: null, mrcGrade: null });
  expect(JSON.parse(versions[1]?.document ?? '')).toMatchObject({ mrcGrade: 4, closure: null });
});

it('refuses to move the receipt behind an assessment', async () => {
  const id = await givenReferral(app);
  await givenAssessment(app, id, { assessedOn: '2026-04-20' });
  expectProblem(await correct(id, { receivedOn: '2026-04-21' }), BEHIND_AN_EVENT);
  expect((await correct(id, { receivedOn: '2026-04-20' })).status).toBe(200);
});

it('refuses to move the receipt behind a session on whose register the person stands', async () => {
  const id = await givenReferral(app);
  const sessionId = await givenSession(app, { heldOn: '2026-05-05' });
  await app.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, {
    attendances: [{ referralId: id, outcome: 'attended' }],
  });
  expectProblem(await correct(id, { receivedOn: '2026-05-06' }), BEHIND_AN_EVENT);
  expect((await correct(id, { receivedOn: '2026-05-05' })).status).toBe(200);
});

it.each([
  ['the triage', 'triage', { decision: 'accepted', decidedOn: '2026-04-10' }],
  ['an offer', 'offers', { kind: 'assessment', offeredOn: '2026-04-10', response: 'accepted' }],
  ['the closure', 'closure', { closedOn: '2026-04-10', reason: 'declined' }],
])('refuses to move the receipt behind %s', async (_name, path, body) => {
  const id = await givenReferral(app);
  await created(app, `/api/v1/referrals/${id}/${path}`, body);
  expectProblem(await correct(id, { receivedOn: '2026-04-11' }), BEHIND_AN_EVENT);
});

it('names site and commissioner that the team does not have', async () => {
  const id = await givenReferral(app);
  const changes = { siteId: app.otherTeam.siteId, commissionerId: app.teamId };
  expectProblem(await correct(id, changes), {
    status: 422,
    type: 'rules-broken',
    pointers: ['/changes/siteId', '/changes/commissionerId'],
  });
});

it('refuses a correction that changes nothing', async () => {
  const id = await givenReferral(app);
  expectProblem(await correct(id, {}), { status: 400, type: 'malformed-request', pointers: ['/changes'] });
});

const BEHIND_AN_EVENT = {
  status: 422,
  type: 'rules-broken',
  pointers: ['/changes/receivedOn'],
  codes: ['out-of-order'],
} as const;
