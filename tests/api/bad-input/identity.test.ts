import { expect, it } from 'vitest';
import { refusesAll } from '../../support/bad-input.js';
import type { BadInput, World } from '../../support/bad-input.js';
import { BODY_OPERATIONS, sendChanged } from '../../support/bodies.js';
import type { Body } from '../../support/entries.js';
import { aPatient } from '../../support/entries.js';
import { created } from '../../support/scenario.js';
import { expectProblem } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import { createAccount, createTeam } from '../../../src/usecases/accounts/provision.js';
import { clientOf } from '../../support/start-app.js';

/** The team of the tests is a demo team, which may hold numbers that start with 999 only. */
const NHS_NUMBERS: readonly (readonly [nhsNumber: string, why: string, code: string])[] = [
  ['9990000019', 'a wrong check digit', 'wrong-check-digit'],
  ['9990000081', 'two digits exchanged', 'wrong-check-digit'],
  ['9999999999', 'one digit ten times', 'repeated-digit'],
  ['0000000000', 'ten zeros', 'repeated-digit'],
  ['9434765919', 'a number outside the test range', 'outside-test-range'],
  ['999000001', 'nine digits', 'not-ten-digits'],
  ['99900000180', 'eleven digits', 'not-ten-digits'],
  ['999000001O', 'a letter for a zero', 'not-ten-digits'],
  ['٩٩٩٠٠٠٠٠١٨', 'digits of another script', 'not-ten-digits'],
  ['', 'nothing', 'not-ten-digits'],
];

/** Operations on one record, with the place of another team's id in the path. */
const PATHS: readonly (readonly [
  operationId: string,
  id: 'patientId' | 'referralId' | 'assessmentId' | 'sessionId',
])[] = [
  ['correctPatient', 'patientId'],
  ['correctReferral', 'referralId'],
  ['triageReferral', 'referralId'],
  ['recordOffer', 'referralId'],
  ['closeReferral', 'referralId'],
  ['recordAssessment', 'referralId'],
  ['correctAssessment', 'assessmentId'],
  ['recordAttendances', 'sessionId'],
];

refusesAll([
  ...NHS_NUMBERS.flatMap(([nhsNumber, why, code]): readonly BadInput[] => [
    rule(`an NHS number with ${why}`, 'registerPatient', { nhsNumber }, '/nhsNumber', code),
    rule(
      `a correction to an NHS number with ${why}`,
      'correctPatient',
      { changes: { nhsNumber, nhsNumberMissingReason: null } },
      '/changes/nhsNumber',
      code,
    ),
  ]),
  rule(
    'neither NHS number nor reason',
    'registerPatient',
    { nhsNumber: null },
    '/nhsNumberMissingReason',
    'nhs-number-or-reason',
  ),
  rule(
    'a quintile without the year of its index',
    'registerPatient',
    { nhsNumber: '9990000042', deprivationQuintile: 2 },
    '/deprivationIndexYear',
    'quintile-with-year',
  ),
  ...PATHS.map(([operationId, id]): BadInput => ({
    name: `${operationId} on a record of another team`,
    status: 404,
    type: 'not-found',
    send: (world) => sendTo(world, operationId, world.theirs[id], world[id]),
  })),
  ...PATHS.map(([operationId, id]): BadInput => ({
    name: `${operationId} on a record that is not there`,
    status: 404,
    type: 'not-found',
    send: (world) => sendTo(world, operationId, '00000000-0000-4000-8000-000000000000', world[id]),
  })),
  ...PATHS.map(([operationId, id]): BadInput => ({
    name: `${operationId} with an id that is no UUID`,
    status: 400,
    type: 'malformed-request',
    pointers: [id],
    send: (world) => sendTo(world, operationId, "1' or '1'='1", world[id]),
  })),
  ...['', '/assessments', '/outcomes'].map((part): BadInput => ({
    name: `reading /referrals/{id}${part} of another team`,
    status: 404,
    type: 'not-found',
    send: ({ app, theirs }) => app.as('lead').get(`/api/v1/referrals/${theirs.referralId}${part}`),
  })),
]);

it('refuses a number of the test range for a live team, and takes one outside it', async () => {
  const app = await startApp();
  const { context } = app.record;
  const { teamId } = await createTeam(context, { name: 'Live team', kind: 'live', siteNames: ['Pier'] });
  const { token } = await createAccount(context, {
    displayName: 'Live admin',
    belonging: { role: 'admin', teamId },
    tokenName: 'tests',
    expiresAt: '2100-01-01T00:00:00.000Z',
  });
  const register = (nhsNumber: string) =>
    clientOf(app.app, token).post('/api/v1/patients', aPatient({ nhsNumber }));
  expectProblem(await register('9990000018'), {
    status: 422,
    type: 'rules-broken',
    pointers: ['/nhsNumber'],
    codes: ['test-range'],
  });
  // Printed as the worked example of the check digit in the NHS Data Dictionary.
  expect((await register('9434765919')).status).toBe(201);
  await app.close();
});

it('names no patient detail in a refusal', async () => {
  const app = await startApp();
  await created(app, '/api/v1/patients', aPatient());
  const bodies = [aPatient(), aPatient({ nhsNumber: '9990000019' }), aPatient({ bornOn: '1954-02-30' })];
  for (const body of bodies) {
    const { status, text } = await app.as('admin').post('/api/v1/patients', body);
    expect(status).toBeGreaterThanOrEqual(400);
    for (const detail of ['Sandwort', 'Mavis', '1954', '999000']) expect(text).not.toContain(detail);
  }
  await app.close();
});

function rule(name: string, operationId: string, changes: Body, pointer: string, code: string): BadInput {
  return {
    name,
    status: 422,
    type: 'rules-broken',
    pointers: [pointer],
    codes: [code],
    send: (world: World) => sendChanged(world, operationId, changes),
  };
}

function sendTo(world: World, operationId: string, id: string, ours: string) {
  const operation = BODY_OPERATIONS.find((candidate) => candidate.operationId === operationId);
  if (operation === undefined) throw new Error(`There is no ${operationId}.`);
  const path = operation.path(world).replace(ours, encodeURIComponent(id));
  return world.app.as('lead')[operation.method](path, operation.body(world));
}
