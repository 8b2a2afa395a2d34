import { afterAll, beforeAll, expect, it } from 'vitest';
import { aSession } from '../../support/entries.js';
import { expectProblem, itemsOf, walkPages } from '../../support/response.js';
import { created, givenReferral, givenSession } from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const DAYS = ['2026-05-04', '2026-05-06', '2026-05-06', '2026-05-06', '2026-12-24'] as const;

let app: TestApp;
/** Sessions in the order of DAYS. */
let held: string[];
let elsewhere: string;
let theirs: string;

beforeAll(async () => {
  app = await startApp();
  held = [];
  for (const heldOn of DAYS) held.push(await givenSession(app, { heldOn }));
  elsewhere = await givenSession(app, { siteId: app.secondSiteId, heldOn: '2026-05-05' });
  theirs = await created(app, '/api/v1/sessions', aSession(app.otherTeam.siteId), 'other-team');
});
afterAll(() => app.close());

const list = (query: string) => app.as('admin').get(`/api/v1/sessions${query}`);
const idsOf = async (query: string) => itemsOf(await list(query)).map((row) => row['id']);

it('answers with the session, an empty register and its address', async () => {
  const body = aSession(app.siteId, { heldOn: '2026-04-01', mode: 'remote', isSupervised: false });
  const response = await app.as('clinician').post('/api/v1/sessions', body);
  expect(response.status).toBe(201);
  const { id } = response.body as { id: string };
  expect(response.headers['location']).toBe(`/api/v1/sessions/${id}`);
  expect(response.body).toEqual({ ...body, id, version: 1, enteredInError: null, attendances: [] });
});

it('refuses a site that the team does not have', async () => {
  const before = await app.countRows();
  const response = await app.as('admin').post('/api/v1/sessions', aSession(app.otherTeam.siteId));
  expectProblem(response, { status: 422, type: 'rules-broken', pointers: ['/siteId'] });
  expect(await app.countRows()).toEqual(before);
});

it('lists the latest day first, and of one day the latest registered first', async () => {
  const [early, may1, may2, may3, christmas] = held;
  expect(await idsOf('?from=2026-05-02')).toEqual([christmas, may3, may2, may1, elsewhere, early]);
});

it('shows each session with its own register', async () => {
  const referralId = await givenReferral(app);
  const id = await givenSession(app, { heldOn: '2026-08-03' });
  await givenSession(app, { heldOn: '2026-08-03' });
  const attendances = [{ referralId, outcome: 'attended' }];
  await app.as('admin').put(`/api/v1/sessions/${id}/attendances`, { attendances });
  const rows = itemsOf(await list('?from=2026-08-03&to=2026-08-03'));
  expect(rows.map((row) => row['attendances'])).toEqual([[], attendances]);
});

it('narrows to days, first and last included', async () => {
  expect(await idsOf('?from=2026-05-05&to=2026-05-06')).toEqual([held[3], held[2], held[1], elsewhere]);
});

it('narrows to one site', async () => {
  expect(await idsOf(`?siteId=${app.secondSiteId}`)).toEqual([elsewhere]);
});

it('walks the whole list without gaps or repeats, three of one day across a page end included', async () => {
  const all = await idsOf('?limit=200');
  for (const limit of [1, 2, 3]) {
    const { rows, pages } = await walkPages((cursor) =>
      list(`?limit=${limit}${cursor === null ? '' : `&cursor=${cursor}`}`),
    );
    expect(rows.map((row) => row['id'])).toEqual(all);
    expect(pages).toBe(Math.ceil(all.length / limit));
  }
});

it("never shows another team's sessions, not even by their site", async () => {
  expect(await idsOf('?limit=200')).not.toContain(theirs);
  expect(await idsOf(`?siteId=${app.otherTeam.siteId}`)).toEqual([]);
});

it('refuses a day that does not exist', async () => {
  expectProblem(await list('?from=2026-02-30'), {
    status: 400,
    type: 'malformed-request',
    pointers: ['from'],
  });
});
