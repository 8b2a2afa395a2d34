import { afterAll, beforeAll, expect, it } from 'vitest';
import { aPatient, TEST_NHS_NUMBERS } from '../../support/entries.js';
import { expectProblem, itemsOf, walkPages } from '../../support/response.js';
import { created, givenPatient } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
  await created(app, '/api/v1/patients', aPatient({ nhsNumber: TEST_NHS_NUMBERS[0] }));
  await givenPatient(app, { familyName: 'Ångström', givenName: 'Signe', bornOn: '1950-01-31' });
  await givenPatient(app, { familyName: 'Sandbank', givenName: 'Ulla', bornOn: '1950-01-31' });
  await givenPatient(app, { familyName: "O'Shingle", givenName: 'Pat', bornOn: '1948-12-24' });
  await givenPatient(app, { familyName: 'Per%cent_', givenName: 'Dot', bornOn: '1960-06-01' });
  await created(app, '/api/v1/patients', aPatient({ familyName: 'Sandwort-Quay' }), 'other-team');
});
afterAll(() => app.close());

const search = (query: object) => app.as('admin').post('/api/v1/patients/search', query);
const namesOf = async (query: object) => itemsOf(await search(query)).map((row) => row['familyName']);

it('finds a person by number, with or without spaces', async () => {
  expect(await namesOf({ nhsNumber: '999 000 0018' })).toEqual(['Sandwort']);
});

it('finds nobody by a number that nobody of the team has', async () => {
  expect(await namesOf({ nhsNumber: TEST_NHS_NUMBERS[4] })).toEqual([]);
});

it('finds nobody by a number that cannot exist', async () => {
  expect(await namesOf({ nhsNumber: '9990000019' })).toEqual([]);
});

it('finds people by the start of the family name, whatever the case, in the order of names', async () => {
  expect(await namesOf({ familyName: 'sAND' })).toEqual(['Sandbank', 'Sandwort']);
});

it.each(['Ångström', 'ångs', 'ANGSTROM', 'A\u030angstrom'])(
  'finds a name with accents by %s',
  async (typed) => {
    expect(await namesOf({ familyName: typed })).toEqual(['Ångström']);
  },
);

it('takes signs that mean something to databases as they are', async () => {
  expect(await namesOf({ familyName: 'per%' })).toEqual(['Per%cent_']);
  expect(await namesOf({ familyName: '%' })).toEqual([]);
  expect(await namesOf({ familyName: "o'sh" })).toEqual(["O'Shingle"]);
});

it('finds people by date of birth', async () => {
  expect(await namesOf({ bornOn: '1950-01-31' })).toEqual(['Ångström', 'Sandbank']);
});

it('narrows by every part of a search', async () => {
  expect(await namesOf({ familyName: 'Sand', bornOn: '1950-01-31' })).toEqual(['Sandbank']);
});

it('finds a corrected name, and no longer the former one', async () => {
  const id = await givenPatient(app, { familyName: 'Eelgrass' });
  await app.as('admin').patch(`/api/v1/patients/${id}`, {
    reason: 'Married',
    changes: { familyName: 'Étang' },
  });
  expect(await namesOf({ familyName: 'Eel' })).toEqual([]);
  expect(await namesOf({ familyName: 'etang' })).toEqual(['Étang']);
});

it('asks for something to search by', async () => {
  expectProblem(await search({}), { status: 400, type: 'malformed-request', pointers: [''] });
});

it('walks all that a search finds without gaps or repeats, people of one name included', async () => {
  const ids: string[] = [];
  for (let count = 0; count < 5; count += 1) ids.push(await givenPatient(app, { familyName: 'Samphire' }));
  const { rows, pages } = await walkPages((cursor) => search({ familyName: 'samphire', limit: 2, cursor }));
  expect(pages).toBe(3);
  expect(rows.map((row) => row['id'])).toEqual([...ids].sort());
});

it('walks all people of the team, and of no other, without gaps or repeats', async () => {
  const { db } = app.record.connection;
  const stored = await db
    .selectFrom('patient')
    .select('id')
    .where('team_id', '=', app.teamId)
    .orderBy('id')
    .execute();
  const { rows, pages } = await walkPages((cursor) =>
    app.as('clinician').get(`/api/v1/patients?limit=3${cursor === null ? '' : `&cursor=${cursor}`}`),
  );
  expect(rows.map((row) => row['id'])).toEqual(stored.map((row) => row.id));
  expect(pages).toBe(Math.ceil(stored.length / 3));
});

it('ends a list whose last page is full', async () => {
  const all = itemsOf(await app.as('admin').get('/api/v1/patients?limit=200'));
  const response = await app.as('admin').get(`/api/v1/patients?limit=${all.length}`);
  expect(response.body).toMatchObject({ nextCursor: null });
});

it('does not know a person of another team, nor one who is not there', async () => {
  const theirs = await created(
    app,
    '/api/v1/patients',
    aPatient({ nhsNumber: TEST_NHS_NUMBERS[4] }),
    'other-team',
  );
  for (const id of [theirs, '00000000-0000-4000-8000-000000000000']) {
    expectProblem(await app.as('lead').get(`/api/v1/patients/${id}`), { status: 404, type: 'not-found' });
  }
});
