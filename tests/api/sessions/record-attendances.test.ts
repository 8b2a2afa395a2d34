import { afterAll, beforeAll, expect, it } from 'vitest';
import { aPatient, aReferralBody, aSession } from '../../support/entries.js';
import { expectProblem, itemsOf } from '../../support/response.js';
import { created, givenClosedReferral, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

type Register = readonly (readonly [referralId: string, outcome: string])[];

const put = (sessionId: string, register: Register, reason: string | null = null) =>
  app.as('admin').put(`/api/v1/sessions/${sessionId}/attendances`, {
    reason,
    attendances: register.map(([referralId, outcome]) => ({ referralId, outcome })),
  });

const storedRows = (sessionId: string) =>
  app.record.connection.db
    .selectFrom('attendance')
    .innerJoin('account', 'account.id', 'attendance.recorded_by')
    .select(['referral_id', 'outcome', 'superseded_at', 'recorded_at', 'account.display_name'])
    .where('session_id', '=', sessionId)
    .orderBy('attendance.id')
    .execute();

it('writes the whole register', async () => {
  const [session, ann, bob] = [await givenSession(app), await givenReferral(app), await givenReferral(app)];
  const response = await put(session, [
    [ann, 'attended'],
    [bob, 'cancelled-by-service'],
  ]);
  expect(response.status).toBe(200);
  expect(response.body).toMatchObject({
    id: session,
    attendances: [
      { referralId: ann, outcome: 'attended' },
      { referralId: bob, outcome: 'cancelled-by-service' },
    ],
  });
});

it('keeps an entry that was changed as superseded, with when and by whom it was written', async () => {
  const [session, ann] = [await givenSession(app), await givenReferral(app)];
  await put(session, [[ann, 'attended']]);
  await put(session, [[ann, 'did-not-attend']], 'Mixed up two names');
  const written = { referral_id: ann, recorded_at: TEST_INSTANT, display_name: 'Test admin' };
  expect(await storedRows(session)).toEqual([
    { ...written, outcome: 'attended', superseded_at: TEST_INSTANT },
    { ...written, outcome: 'did-not-attend', superseded_at: null },
  ]);
});

it('asks why an entry that stands is altered or taken off once the day is over, and not on the day itself', async () => {
  const [past, today] = [await givenSession(app), await givenSession(app, { heldOn: '2026-11-25' })];
  const ann = await givenReferral(app);
  for (const session of [past, today]) await put(session, [[ann, 'attended']]);
  const missing = { ...fault('/reason', 'reason-missing') };
  expectProblem(await put(past, [[ann, 'did-not-attend']]), missing);
  expectProblem(await put(past, []), missing);
  expect((await put(past, [[ann, 'attended']])).status).toBe(200);
  expect((await put(today, [[ann, 'did-not-attend']])).status).toBe(200);
  await put(past, [[ann, 'did-not-attend']], 'Mixed up two names');
  const history = itemsOf(await app.as('admin').get(`/api/v1/sessions/${past}/history`));
  expect(history.at(-1)).toMatchObject({
    reason: 'Mixed up two names',
    changes: [{ field: `attendances.${ann}`, former: 'attended', present: 'did-not-attend' }],
  });
});

it('adds somebody who was forgotten after the day without asking why', async () => {
  const [session, ann, bob] = [await givenSession(app), await givenReferral(app), await givenReferral(app)];
  await put(session, [[ann, 'attended']]);
  const both: Register = [
    [ann, 'attended'],
    [bob, 'attended'],
  ];
  expect((await put(session, both)).status).toBe(200);
});

it('leaves entries alone that did not change', async () => {
  const [session, ann] = [await givenSession(app), await givenReferral(app)];
  await put(session, [[ann, 'attended']]);
  const before = await storedRows(session);
  await put(session, [[ann, 'attended']]);
  expect(await storedRows(session)).toEqual(before);
});

it('takes off the register whom it does not list, and keeps the entry', async () => {
  const [session, ann, bob] = [await givenSession(app), await givenReferral(app), await givenReferral(app)];
  await put(session, [
    [ann, 'attended'],
    [bob, 'attended'],
  ]);
  const response = await put(session, [[bob, 'attended']], 'Was not expected');
  expect(response.body).toMatchObject({ attendances: [{ referralId: bob, outcome: 'attended' }] });
  expect(await storedRows(session)).toMatchObject([
    { referral_id: ann, superseded_at: TEST_INSTANT },
    { referral_id: bob, superseded_at: null },
  ]);
});

it('brings a person who attended into the programme', async () => {
  const [session, ann] = [await givenSession(app, { heldOn: '2026-11-20' }), await givenReferral(app)];
  await put(session, [[ann, 'attended']]);
  expect((await app.as('admin').get(`/api/v1/referrals/${ann}`)).body).toMatchObject({
    stage: 'in-programme',
  });
});

it('takes cancellations of a session that is still to come, and nothing else', async () => {
  const [session, ann] = [await givenSession(app, { heldOn: '2026-11-26' }), await givenReferral(app)];
  for (const outcome of ['attended', 'did-not-attend']) {
    expectProblem(await put(session, [[ann, outcome]]), fault('/attendances/0/outcome', 'in-the-future'));
  }
  expect((await put(session, [[ann, 'cancelled-by-patient']])).status).toBe(200);
});

it('takes an attendance on the day itself', async () => {
  const [session, ann] = [await givenSession(app, { heldOn: '2026-11-25' }), await givenReferral(app)];
  expect((await put(session, [[ann, 'attended']])).status).toBe(200);
});

it('refuses a person twice', async () => {
  const [session, ann] = [await givenSession(app), await givenReferral(app)];
  const response = await put(session, [
    [ann, 'attended'],
    [ann, 'did-not-attend'],
  ]);
  expectProblem(response, fault('/attendances/1/referralId', 'listed-twice'));
});

it('refuses a session before the referral was received', async () => {
  const session = await givenSession(app, { heldOn: '2026-04-01' });
  const response = await put(session, [[await givenReferral(app), 'attended']]);
  expectProblem(response, fault('/attendances/0/referralId', 'before-receipt'));
});

it('refuses a session after the referral was closed', async () => {
  const session = await givenSession(app, { heldOn: '2026-07-02' });
  const response = await put(session, [[await givenClosedReferral(app), 'attended']]);
  expectProblem(response, fault('/attendances/0/referralId', 'after-closure'));
});

it('does not know a referral of another team', async () => {
  const patientId = await created(app, '/api/v1/patients', aPatient(), 'other-team');
  const body = aReferralBody(patientId, app.otherTeam.siteId);
  const theirs = await created(app, '/api/v1/referrals', body, 'other-team');
  const response = await put(await givenSession(app), [[theirs, 'attended']]);
  expectProblem(response, fault('/attendances/0/referralId', 'not-found'));
});

it('does not know a session of another team', async () => {
  const theirs = await created(app, '/api/v1/sessions', aSession(app.otherTeam.siteId), 'other-team');
  expectProblem(await put(theirs, []), { status: 404, type: 'not-found' });
});

it('writes nothing of a register of which one entry is wrong', async () => {
  const [session, ann] = [await givenSession(app), await givenReferral(app)];
  const before = await app.countRows();
  await put(session, [
    [ann, 'attended'],
    [ann, 'attended'],
  ]);
  expect(await app.countRows()).toEqual(before);
});

function fault(pointer: string, code: string) {
  return { status: 422, type: 'rules-broken', pointers: [pointer], codes: [code] };
}
