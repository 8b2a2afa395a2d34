import { afterAll, beforeAll, expect, it } from 'vitest';
import { INDICATORS } from '../../src/domain/indicators/registered.js';
import { MEASURES } from '../../src/domain/measures/catalogue.js';
import { PREDICTION_EQUATIONS } from '../../src/domain/prediction/registered.js';
import { allSources } from '../../src/domain/sources/all-sources.js';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
let pages: PageClient;
beforeAll(async () => {
  service = await startApp();
  pages = await pagesAs(service, 'admin');
});
afterAll(() => service.close());

it('every measure leads to a page of its own', async () => {
  const { text } = await pages.get('/definitions/measures');
  for (const { id } of MEASURES) {
    expect(text).toContain(`href="/definitions/measures/${id}"`);
    expect((await pages.get(`/definitions/measures/${id}`)).status, id).toBe(200);
  }
  expect((await pages.get('/definitions/measures/no-such')).status).toBe(404);
});

it('a threshold stands with its people, its source and the mark that says how well it is known', async () => {
  const { text } = await pages.get('/definitions/measures/incremental-shuttle-walk-distance');
  expect(text).toContain('>48\u00a0m<');
  expect(text).toContain('Respiratory conditions, after exercise');
  expect(text).toContain('10.1136/thx.2007.081208');
  expect(text).toMatch(/Lee AL and others 2014[\s\S]*?from memory, check before use/);
});

it('every indicator, equation and source is there', async () => {
  const { text: indicators } = await pages.get('/definitions/indicators');
  for (const { id, version } of INDICATORS) expect(indicators).toContain(`${id}@${version}`);
  const { text: equations } = await pages.get('/definitions/equations');
  expect(equations).toContain('4.12 \u00d7 height (cm) \u2212 1.75 \u00d7 age (years)');
  for (const { id } of PREDICTION_EQUATIONS) expect(equations).toContain(`id="equation-${id}"`);
  const { text: sources } = await pages.get('/definitions/sources');
  for (const { citation } of allSources()) expect(sources).toContain(`id="source-${citation.id}"`);
  expect(sources).toContain('from memory, check before use');
});

it('every link to a source leads to one', async () => {
  const { text: sources } = await pages.get('/definitions/sources');
  for (const path of [
    '/definitions/indicators',
    '/definitions/equations',
    '/definitions/measures/cat-total',
  ]) {
    const { text } = await pages.get(path);
    const ids = [...text.matchAll(/href="\/definitions\/sources#([^"]+)"/g)].map(([, id = '']) => id);
    expect(ids.length, path).toBeGreaterThan(0);
    for (const id of ids) expect(sources).toContain(`id="${id}"`);
  }
});
