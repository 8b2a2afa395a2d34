import { afterAll, beforeAll, expect, it } from 'vitest';
import { aPatient, aReferralBody } from '../../support/entries.js';
import { expectProblem, itemsOf, walkPages } from '../../support/response.js';
import {
  created,
  givenAssessment,
  givenClosedReferral,
  givenReferral,
  givenTriagedReferral,
} from '../../support/scenario.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const RECEIPTS = ['2026-01-05', '2026-03-09', '2026-03-09', '2026-03-09', '2026-06-30'] as const;

let app: TestApp;
/** Ids of referrals awaiting triage, in the order of RECEIPTS. */
let waiting: string[];
let triaged: string;
let assessed: string;
let closed: string;
let theirs: string;

beforeAll(async () => {
  app = await startApp();
  waiting = [];
  for (const receivedOn of RECEIPTS) waiting.push(await givenReferral(app, { receivedOn }));
  triaged = await givenTriagedReferral(app);
  assessed = await givenTriagedReferral(app);
  await givenAssessment(app, assessed);
  closed = await givenClosedReferral(app);
  const patientId = await created(app, '/api/v1/patients', aPatient(), 'other-team');
  const body = aReferralBody(patientId, app.otherTeam.siteId);
  theirs = await created(app, '/api/v1/referrals', body, 'other-team');
});
afterAll(() => app.close());

const list = (query: string) => app.as('admin').get(`/api/v1/referrals${query}`);
const idsOf = async (query: string) => itemsOf(await list(query)).map((row) => row['id']);

it('lists the latest receipt first, and of one day the latest registered first', async () => {
  const [january, march1, march2, march3, june] = waiting;
  expect(await idsOf('?stage=awaiting-triage')).toEqual([june, march3, march2, march1, january]);
});

it('shows each referral with its stage', async () => {
  const rows = itemsOf(await list(''));
  const stages = new Map(rows.map((row) => [row['id'], row['stage']]));
  expect([stages.get(triaged), stages.get(assessed), stages.get(closed)]).toEqual([
    'awaiting-assessment',
    'awaiting-start',
    'closed',
  ]);
});

it.each([
  ['awaiting-assessment', () => [triaged]],
  ['awaiting-start', () => [assessed]],
  ['closed', () => [closed]],
  ['in-programme', () => []],
])('narrows to the stage %s', async (stage, expected) => {
  expect(await idsOf(`?stage=${stage}`)).toEqual(expected());
});

it('walks the whole list without gaps or repeats, three of one day across a page end included', async () => {
  const all = await idsOf('?limit=200');
  expect(all).toHaveLength(RECEIPTS.length + 3);
  for (const limit of [1, 2, 3]) {
    const { rows, pages } = await walkPages((cursor) =>
      list(`?limit=${limit}${cursor === null ? '' : `&cursor=${cursor}`}`),
    );
    expect(rows.map((row) => row['id'])).toEqual(all);
    expect(pages).toBe(Math.ceil(all.length / limit));
  }
});

it('walks a list of one stage without gaps or repeats', async () => {
  const { rows, pages } = await walkPages((cursor) =>
    list(`?stage=awaiting-triage&limit=2${cursor === null ? '' : `&cursor=${cursor}`}`),
  );
  expect(rows.map((row) => row['id'])).toEqual(await idsOf('?stage=awaiting-triage'));
  expect(pages).toBe(3);
});

it('goes on where it was when a referral is registered between two pages', async () => {
  const first = await list('?stage=awaiting-triage&limit=2');
  const { nextCursor } = first.body as { nextCursor: string };
  const late = await givenReferral(app, { receivedOn: '2026-11-24' });
  const rest = await idsOf(`?stage=awaiting-triage&limit=200&cursor=${nextCursor}`);
  expect(rest).toEqual([waiting[2], waiting[1], waiting[0]]);
  await created(app, `/api/v1/referrals/${late}/closure`, { closedOn: '2026-11-25', reason: 'declined' });
});

it('narrows to one site', async () => {
  const elsewhere = await givenReferral(app, { siteId: app.secondSiteId, receivedOn: '2025-12-01' });
  expect(await idsOf(`?siteId=${app.secondSiteId}`)).toEqual([elsewhere]);
});

it('narrows to one person', async () => {
  const { patientId } = (await app.as('admin').get(`/api/v1/referrals/${closed}`)).body as {
    patientId: string;
  };
  expect(await idsOf(`?patientId=${patientId}`)).toEqual([closed]);
});

it("never shows another team's referrals, not even by their site", async () => {
  expect(await idsOf('?limit=200')).not.toContain(theirs);
  expect(await idsOf(`?siteId=${app.otherTeam.siteId}`)).toEqual([]);
  const rows = itemsOf(await app.as('other-team').get('/api/v1/referrals'));
  expect(rows.map((row) => row['id'])).toEqual([theirs]);
});

it.each([
  ['stage', '?stage=somewhere', 'stage'],
  ['siteId', '?siteId=here', 'siteId'],
  ['limit', '?limit=201', 'limit'],
  ['limit', '?limit=0', 'limit'],
  ['limit', '?limit=ten', 'limit'],
  ['limit', '?limit=', 'limit'],
  ['limit', '?limit=2.5', 'limit'],
  ['a parameter that there is not', '?search=x', 'search'],
])('refuses a wrong %s (%s)', async (_name, query, pointer) => {
  expectProblem(await list(query), { status: 400, type: 'malformed-request', pointers: [pointer] });
});
