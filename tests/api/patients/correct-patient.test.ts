import { afterAll, beforeAll, expect, it } from 'vitest';
import { aPatient, TEST_NHS_NUMBERS } from '../../support/entries.js';
import { expectProblem } from '../../support/response.js';
import { created, givenPatient, givenReferral } from '../../support/scenario.js';
import { startApp, TEST_INSTANT } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const correct = (id: string, changes: object, reason = 'Typed wrongly') =>
  app.as('admin').patch(`/api/v1/patients/${id}`, { reason, changes });

it('changes what is named and leaves the rest', async () => {
  const id = await givenPatient(app, { givenName: 'Mavis' });
  const response = await correct(id, { familyName: 'Sandwich' });
  expect(response.status).toBe(200);
  expect(response.body).toMatchObject({ id, version: 2, familyName: 'Sandwich', givenName: 'Mavis' });
});

it('keeps the former state whole, with the reason, the instant and who corrected it', async () => {
  const id = await givenPatient(app, { familyName: 'Sandwort' });
  await correct(id, { familyName: 'Sandwich' }, 'Misheard on the telephone');
  await correct(id, { familyName: 'Sandwort' }, 'Was right before');
  const { db } = app.record.connection;
  const versions = await db
    .selectFrom('patient_version')
    .innerJoin('account', 'account.id', 'patient_version.superseded_by')
    .select(['patient_version.version', 'document', 'reason', 'superseded_at', 'account.display_name'])
    .where('patient_id', '=', id)
    .orderBy('patient_version.version')
    .execute();
  expect(versions).toMatchObject([
    {
      version: 1,
      reason: 'Misheard on the telephone',
      superseded_at: TEST_INSTANT,
      display_name: 'Test admin',
    },
    { version: 2, reason: 'Was right before', superseded_at: TEST_INSTANT, display_name: 'Test admin' },
  ]);
  expect(JSON.parse(versions[0]?.document ?? '')).toMatchObject({ id, version: 1, familyName: 'Sandwort' });
  expect(JSON.parse(versions[1]?.document ?? '')).toMatchObject({ id, version: 2, familyName: 'Sandwich' });
});

it('adds a number that was traced later, and takes the reason away', async () => {
  const id = await givenPatient(app);
  const response = await correct(id, { nhsNumber: TEST_NHS_NUMBERS[0], nhsNumberMissingReason: null });
  expect(response.body).toMatchObject({ nhsNumber: TEST_NHS_NUMBERS[0], nhsNumberMissingReason: null });
});

it('refuses a number together with a reason for having none', async () => {
  const id = await givenPatient(app);
  const response = await correct(id, { nhsNumber: TEST_NHS_NUMBERS[1] });
  expectProblem(response, {
    status: 422,
    type: 'rules-broken',
    pointers: ['/changes/nhsNumberMissingReason'],
  });
});

it('refuses the number of another person of the team, and names that record', async () => {
  const body = aPatient({ nhsNumber: TEST_NHS_NUMBERS[2] });
  const existingId = await created(app, '/api/v1/patients', body);
  const id = await givenPatient(app);
  const response = await correct(id, { nhsNumber: TEST_NHS_NUMBERS[2], nhsNumberMissingReason: null });
  expectProblem(response, { status: 409, type: 'patient-already-registered' });
  expect(response.body).toMatchObject({ existingId });
});

it('accepts the number that the person has already', async () => {
  const body = aPatient({ nhsNumber: TEST_NHS_NUMBERS[3] });
  const id = await created(app, '/api/v1/patients', body);
  expect((await correct(id, { nhsNumber: TEST_NHS_NUMBERS[3] })).status).toBe(200);
});

it('refuses a date of birth after a referral was received', async () => {
  const referralId = await givenReferral(app, { receivedOn: '2026-04-02' });
  const { patientId } = (await app.as('lead').get(`/api/v1/referrals/${referralId}`)).body as {
    patientId: string;
  };
  expectProblem(await correct(patientId, { bornOn: '2026-04-03' }), {
    status: 422,
    type: 'rules-broken',
    pointers: ['/changes/bornOn'],
    codes: ['after-receipt'],
  });
});

it('refuses a correction that changes nothing', async () => {
  const id = await givenPatient(app);
  expectProblem(await correct(id, {}), { status: 400, type: 'malformed-request', pointers: ['/changes'] });
});

it('writes nothing when a correction is refused', async () => {
  const id = await givenPatient(app);
  const before = await app.countRows();
  expectProblem(await correct(id, { bornOn: '2027-01-01' }), {
    status: 422,
    type: 'rules-broken',
    pointers: ['/changes/bornOn'],
    codes: ['in-the-future'],
  });
  expect(await app.countRows()).toEqual(before);
  expect((await app.as('admin').get(`/api/v1/patients/${id}`)).body).toMatchObject({ version: 1 });
});

it('does not know a person of another team', async () => {
  const id = await created(app, '/api/v1/patients', aPatient(), 'other-team');
  expectProblem(await correct(id, { familyName: 'Sandwich' }), { status: 404, type: 'not-found' });
});
