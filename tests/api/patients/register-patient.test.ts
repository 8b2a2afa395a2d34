import { afterAll, beforeAll, expect, it } from 'vitest';
import { aPatient, TEST_NHS_NUMBERS } from '../../support/entries.js';
import { expectProblem } from '../../support/response.js';
import { created } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

it('answers a registration with the whole record, its version and its address', async () => {
  const response = await app.as('admin').post('/api/v1/patients', aPatient({ nhsNumber: '999 000 0018' }));
  expect(response.status).toBe(201);
  const { id } = response.body as { id: string };
  expect(response.headers['location']).toBe(`/api/v1/patients/${id}`);
  expect(response.body).toEqual({
    id,
    version: 1,
    nhsNumber: '9990000018',
    nhsNumberMissingReason: null,
    familyName: 'Sandwort',
    givenName: 'Mavis',
    bornOn: '1954-03-09',
    sexAtBirth: 'female',
    gender: 'not-known',
    ethnicCategory: '99',
    deprivationQuintile: null,
    deprivationIndexYear: null,
    smokingStatus: 'not-known',
    interpreterNeed: 'not-known',
    livesAlone: 'not-known',
    homeOxygen: 'not-known',
    gpPracticeCode: null,
    mergedInto: null,
  });
});

it('reads back every field that was given', async () => {
  const given = aPatient({
    nhsNumber: TEST_NHS_NUMBERS[1],
    gender: 'non-binary',
    ethnicCategory: 'Z',
    deprivationQuintile: 1,
    deprivationIndexYear: 2019,
    smokingStatus: 'former',
    interpreterNeed: 'yes',
    livesAlone: 'no',
    homeOxygen: 'yes',
    gpPracticeCode: 'Y99999',
  });
  const id = await created(app, '/api/v1/patients', given, 'admin');
  const response = await app.as('clinician').get(`/api/v1/patients/${id}`);
  expect(response.body).toEqual({ ...given, id, version: 1, mergedInto: null, nhsNumberMissingReason: null });
});

it('registers a person whose number is not traced yet, with that reason', async () => {
  const body = aPatient({ nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' });
  const response = await app.as('clinician').post('/api/v1/patients', body);
  expect(response.status).toBe(201);
  expect(response.body).toMatchObject({ nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' });
});

it('registers two people without a number, whatever else they share', async () => {
  const body = aPatient({ nhsNumber: null, nhsNumberMissingReason: 'declined' });
  const first = await created(app, '/api/v1/patients', body);
  expect(await created(app, '/api/v1/patients', body)).not.toBe(first);
});

it('refuses a number that the team has already, and names the record', async () => {
  const body = aPatient({ nhsNumber: TEST_NHS_NUMBERS[2] });
  const existingId = await created(app, '/api/v1/patients', body);
  const response = await app.as('admin').post('/api/v1/patients', body);
  expectProblem(response, { status: 409, type: 'patient-already-registered' });
  expect(response.body).toMatchObject({ existingId });
});

it('lets another team register the same number, and tells it nothing of ours', async () => {
  const body = aPatient({ nhsNumber: TEST_NHS_NUMBERS[3] });
  const ours = await created(app, '/api/v1/patients', body);
  const theirs = await created(app, '/api/v1/patients', body, 'other-team');
  expect(theirs).not.toBe(ours);
});
