import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startWorld } from '../../support/bad-input.js';
import type { World } from '../../support/bad-input.js';
import { expectProblem } from '../../support/response.js';
import { givenAssessment, givenPatient, givenReferral, givenSession } from '../../support/scenario.js';

let world: World;
beforeAll(async () => {
  world = await startWorld();
  const { app, referralId } = world;
  await givenPatient(app);
  await givenReferral(app);
  await givenSession(app);
  await givenAssessment(app, referralId);
  await givenAssessment(app, referralId, { timepoint: 'discharge', assessedOn: '2026-07-01' });
});
afterAll(() => world.app.close());

/** Every list that is read by address. Sites and commissioners are tested with the catalogue. */
const LISTS = [
  'patients',
  'referrals',
  'sessions',
  'measures',
  'prediction-equations',
  'indicators',
  'norms',
  'sources',
] as const;

const read = (list: string, cursor: string) =>
  world.app.as('lead').get(`/api/v1/${list}?limit=1&cursor=${encodeURIComponent(cursor)}`);

async function cursorOf(list: string): Promise<string> {
  const response = await world.app.as('lead').get(`/api/v1/${list}?limit=1`);
  const { nextCursor } = response.body as { nextCursor: string | null };
  if (nextCursor === null) throw new Error(`${list} has no second page.`);
  return nextCursor;
}

const encoded = (value: unknown): string => Buffer.from(JSON.stringify(value)).toString('base64url');
const BAD_CURSOR = {
  status: 400,
  type: 'malformed-request',
  pointers: ['cursor'],
  codes: ['bad-cursor'],
} as const;

describe.each(LISTS)('the cursor of %s', (list) => {
  it.each([
    ['a word', 'next'],
    ['nothing', ''],
    ['JSON that is no list', encoded({ key: '', id: '' })],
    ['a list that is too short', encoded([list, ''])],
    ['a list of numbers', encoded([list, 1, 2])],
    ['a database statement', "' or 1=1 --"],
  ])('is refused when it is %s', async (_name, cursor) => {
    expectProblem(await read(list, cursor), BAD_CURSOR);
  });

  it('is refused by every other list', async () => {
    const cursor = await cursorOf(list);
    for (const other of LISTS.filter((candidate) => candidate !== list)) {
      expectProblem(await read(other, cursor), BAD_CURSOR);
    }
  });

  it('is refused when it is too long to be one', async () => {
    expectProblem(await read(list, 'x'.repeat(501)), {
      status: 400,
      type: 'malformed-request',
      pointers: ['cursor'],
    });
  });
});

it('is refused when it names a measure that there is not, and does not start the list again', async () => {
  expectProblem(await read('measures', encoded(['measures', '', 'six-hour-walk'])), BAD_CURSOR);
});

it('belongs to the assessments of one referral', async () => {
  const list = `referrals/${world.referralId}/assessments`;
  const cursor = await cursorOf(list);
  expect((await read(list, cursor)).status).toBe(200);
  const { assessmentId } = world;
  expect(cursor).not.toContain(assessmentId);
  const another = await givenReferral(world.app);
  expectProblem(await read(`referrals/${another}/assessments`, cursor), BAD_CURSOR);
});

it('is refused by a search when another list gave it', async () => {
  const cursor = await cursorOf('patients');
  const response = await world.app
    .as('lead')
    .post('/api/v1/patients/search', { familyName: 'Sandwort', cursor });
  expectProblem(response, BAD_CURSOR);
});
