import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { refusesAll, sendRaw, startWorld } from '../../support/bad-input.js';
import type { BadInput, World } from '../../support/bad-input.js';
import { BODY_OPERATIONS, sendChanged } from '../../support/bodies.js';
import { aPatient, aShuttleWalk } from '../../support/entries.js';
import { asRecord, asRecords, expectProblem } from '../../support/response.js';

const malformed = { status: 400, type: 'malformed-request' } as const;

refusesAll([
  ...BODY_OPERATIONS.map((operation): BadInput => ({
    name: `plain text instead of JSON in ${operation.operationId}`,
    status: 415,
    type: 'unsupported-media-type',
    send: (world) =>
      sendRaw(world, {
        method: operation.method,
        path: operation.path(world),
        type: 'text/plain',
        text: JSON.stringify(operation.body(world)),
      }),
  })),
  {
    name: 'a name in another encoding, whose letters were lost on the way',
    ...malformed,
    pointers: ['/familyName'],
    send: (world) => {
      const [before = '', after = ''] = JSON.stringify(aPatient({ familyName: 'Jos|' })).split('|');
      return sendRaw(world, {
        method: 'post',
        path: '/api/v1/patients',
        type: 'application/json',
        // 0xE9 is é in Latin-1, and nothing in UTF-8.
        text: Buffer.concat([Buffer.from(before), Buffer.from([0xe9]), Buffer.from(after)]),
      });
    },
  },
  {
    name: 'a name that turns the direction of reading',
    ...malformed,
    pointers: ['/familyName'],
    send: (world) => sendChanged(world, 'registerPatient', { familyName: 'Sand\u202ewort' }),
  },
]);

describe('the answer', () => {
  let world: World;
  beforeAll(async () => {
    world = await startWorld();
  });
  afterAll(() => world.app.close());

  const get = (path: string) =>
    supertest(world.app.app.server).get(path).set('authorization', `Bearer ${world.app.tokens.lead}`);

  it.each([
    ['20 000 unknown fields', unknownFields(20_000)],
    [
      '2000 unknown fields in each of ten walks',
      { walkTests: numbers(10).map(() => aShuttleWalk(200, 1, unknownFields(2000))) },
    ],
  ])('to %s stays small, and says how many there were', async (_name, changes) => {
    const response = await sendChanged(world, 'recordAssessment', changes);
    expectProblem(response, malformed);
    expect(response.text.length).toBeLessThan(16_384);
    expect(asRecords(asRecord(response.body)['errors'])).toHaveLength(50);
    expect(asRecord(response.body)['detail']).toMatch(
      /^Nothing was stored\. Of 20000 faults the first 50 are named\.$/,
    );
  });

  it('to a register that names one person two hundred times stays small as well', async () => {
    const { referralId } = world;
    const attendances = numbers(200).map(() => ({ referralId, outcome: 'attended' }));
    const response = await sendChanged(world, 'recordAttendances', { attendances });
    expectProblem(response, { status: 422, type: 'rules-broken' });
    expect(response.text.length).toBeLessThan(16_384);
    expect(asRecord(response.body)['detail']).toMatch(/Of 199 faults the first 50 are named/);
  });

  it.each([
    ['an address that cannot be read', '/api/v1/patients/%zz'],
    ['an address with a part that is too long', `/api/v1/patients/${'a'.repeat(200)}`],
  ])('to %s is a problem document that repeats nothing of it', async (_name, path) => {
    const response = await get(path);
    expectProblem(response, malformed);
    expect(response.text).not.toMatch(/%zz|aaaa/);
  });

  it('to an id in capital letters is that of the same id', async () => {
    const response = await get(`/api/v1/patients/${world.patientId.toUpperCase()}`);
    expect(response.body).toMatchObject({ id: world.patientId });
  });

  it('to a cursor of the sites that commissioners get, or that names no site, is a refusal', async () => {
    const first = await get('/api/v1/sites?limit=1');
    const { nextCursor } = first.body as { nextCursor: string };
    const unknown = Buffer.from(JSON.stringify(['sites', '', 'nowhere'])).toString('base64url');
    for (const path of [`/api/v1/commissioners?cursor=${nextCursor}`, `/api/v1/sites?cursor=${unknown}`]) {
      expectProblem(await get(path), { ...malformed, pointers: ['cursor'], codes: ['bad-cursor'] });
    }
  });
});

function unknownFields(count: number): Record<string, number> {
  return Object.fromEntries(numbers(count).map((key) => [`k${key}`, 1]));
}

function numbers(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index);
}
