import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { INDICATORS } from '../../../src/domain/indicators/registered.js';
import { MEASURES } from '../../../src/domain/measures/catalogue.js';
import { PREDICTION_EQUATIONS } from '../../../src/domain/prediction/registered.js';
import { asRecord, asRecords, expectProblem, itemsOf, walkPages } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let app: TestApp;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const get = (path: string) => app.as('commissioner').get(`/api/v1${path}`);

describe.each([
  ['/measures', MEASURES],
  ['/prediction-equations', PREDICTION_EQUATIONS],
  ['/indicators', INDICATORS],
])('%s', (path, entries) => {
  it('walks the whole list without gaps or repeats', async () => {
    const { rows, pages } = await walkPages((cursor) =>
      get(`${path}?limit=7${cursor === null ? '' : `&cursor=${cursor}`}`),
    );
    expect(rows.map((row) => row['id'])).toEqual(entries.map((entry) => entry.id));
    expect(pages).toBe(Math.ceil(entries.length / 7));
  });

  it('names the source of every entry, and marks those whose source was not read', async () => {
    for (const row of itemsOf(await get(`${path}?limit=200`))) {
      const source = asRecord(row['source'] ?? row['rangeSource']);
      expect(source['text'], String(row['id'])).not.toBe('');
      const isRead = source['status'] === 'retrieved';
      expect(source['mark'] === null, `${String(row['id'])}: ${String(source['mark'])}`).toBe(isRead);
    }
  });
});

it('shows a measure with its limits, usual range, threshold and what that amounts to', async () => {
  const response = await get('/measures/incremental-shuttle-walk-distance');
  expect(response.status).toBe(200);
  // Singh 2008, Thorax 63:775: 47.5 m; the walk moves in shuttles of 10 m.
  const threshold = asRecords(asRecord(response.body)['thresholds']).find(
    (each) => each['isDefault'] === true,
  );
  expect(threshold).toMatchObject({ purpose: 'improvement', value: 47.5 });
  expect(threshold?.['amountsTo']).toContain('at least 50 m');
  expect(response.body).toMatchObject({
    unit: 'm',
    betterWhen: 'higher',
    min: 0,
    max: 1020,
    step: 10,
    usualRange: { low: 20, high: 800 },
  });
});

it('does not know a measure that there is not', async () => {
  expectProblem(await get('/measures/six-hour-walk'), { status: 404, type: 'not-found' });
});

it('refuses a name that is too long for a measure', async () => {
  expectProblem(await get(`/measures/${'m'.repeat(81)}`), {
    status: 400,
    type: 'malformed-request',
    pointers: ['measureId'],
  });
});

it.each(['constructor', '__proto__', 'toString'])('does not take %s for a measure', async (name) => {
  expectProblem(await get(`/measures/${name}`), { status: 404, type: 'not-found' });
});

it('lists the sites and the commissioners of the team, and of no other', async () => {
  const sites = itemsOf(await app.as('admin').get('/api/v1/sites'));
  expect(sites).toEqual([
    { id: app.siteId, name: 'Dune Hall' },
    { id: app.secondSiteId, name: 'Saltmarsh Centre' },
  ]);
  const commissioners = itemsOf(await app.as('lead').get('/api/v1/commissioners'));
  expect(commissioners).toEqual([{ id: app.commissionerId, name: 'Marram and Samphire Commissioning' }]);
  expect(itemsOf(await app.as('other-team').get('/api/v1/commissioners'))).toEqual([]);
});

it('walks the sites without gaps or repeats', async () => {
  const { rows, pages } = await walkPages((cursor) =>
    app.as('admin').get(`/api/v1/sites?limit=1${cursor === null ? '' : `&cursor=${cursor}`}`),
  );
  expect(rows.map((row) => row['name'])).toEqual(['Dune Hall', 'Saltmarsh Centre']);
  expect(pages).toBe(2);
});
