import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asRecord, expectProblem } from '../support/response.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

describe('the service itself', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp();
  });
  afterAll(() => service.close());

  it('says that it is ready, to anybody', async () => {
    const response = await service.as(null).get('/api/v1/health');
    expect(response.status).toBe(200);
    expect(response.body).toEqual({ status: 'ready', database: 'reachable', writing: 'possible' });
  });

  it.each(['/health', '/docs', '/openapi.json'])('leads from %s to where it is served', async (path) => {
    const response = await service.as(null).get(path);
    expect(response.status).toBe(308);
    expect(response.headers['location']).toBe(`/api/v1${path}`);
    const there = await supertest(service.app.server).get(path).redirects(3);
    expect(there.status).toBe(200);
  });

  it('describes itself by the document that its documentation opens', async () => {
    const served = await service.as(null).get('/api/v1/openapi.json');
    const documented = await service.as(null).get('/api/v1/docs/json');
    expect(asRecord(served.body)['openapi']).toBe('3.1.0');
    expect(documented.body).toEqual(served.body);
  });

  it('has documentation that loads nothing from elsewhere', async () => {
    const page = await service.as(null).get('/api/v1/docs/').redirects(1);
    expect(page.headers['content-type']).toMatch(/^text\/html/);
    expect(page.text).not.toMatch(/(?:https?:)?\/\/[a-z0-9-]+\.[a-z]/i);
    const assets = [...page.text.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, address = '']) => address);
    expect(assets.length).toBeGreaterThan(3);
    for (const asset of assets) {
      expect(asset, asset).toMatch(/^(\.\/|\/api\/v1\/docs\/)/);
      const file = await service.as(null).get(new URL(asset, 'http://service/api/v1/docs/').pathname);
      expect(file.status, asset).toBe(200);
      expect(Number(file.headers['content-length']), asset).toBeGreaterThan(0);
    }
    const script = await service.as(null).get('/api/v1/docs/static/swagger-initializer.js');
    const code = script.text.replace(/\/\/ .*$/gm, '').replace(/'data:[^']*'/g, '');
    expect(code).not.toMatch(/https?:\/\//);
    expect(code).toContain("resolveUrl('./json')");
    // Without this the page would ask a service on the internet to validate the document.
    expect(code).toContain('"validatorUrl":null');
  });

  it('knows no other address', async () => {
    for (const path of [
      '/api',
      '/api/v1',
      '/api/v1/no-such-thing',
      '/admin',
      '/.env',
      '/api/v1/docs/../../.env',
    ]) {
      expectProblem(await service.as('lead').get(path), { status: 404, type: 'not-found' });
    }
  });
});

describe('a service whose record cannot be read', () => {
  let service: TestApp;
  beforeAll(async () => {
    service = await startApp();
    await service.record.connection.close();
  });
  afterAll(() => service.app.close());

  it('says that it is not ready', async () => {
    const response = await service.as(null).get('/api/v1/health');
    expect(response.status).toBe(503);
    expect(response.body).toEqual({ status: 'not-ready', database: 'unreachable', writing: 'not-possible' });
  });

  it.each([
    ['reading', () => service.as('clinician').get('/api/v1/patients')],
    ['writing', () => service.as('admin').post('/api/v1/patients', { familyName: 'Sandwort' })],
    ['a report', () => service.as('lead').get('/api/v1/reports/quarterly?period=2026-27-Q1')],
    ['the text of a report', () => service.as('lead').get('/api/v1/reports/quarterly.txt?period=2026-27-Q1')],
  ])('answers %s with a problem that tells nothing of its inside', async (_name, ask) => {
    const response = await ask();
    expectProblem(response, { status: 500, type: 'internal' });
    expect(Object.keys(asRecord(response.body)).sort()).toEqual([
      'detail',
      'instance',
      'status',
      'title',
      'type',
    ]);
    expect(response.text).not.toMatch(/\bat .*\.[jt]s|node_modules|sqlite|database|kysely|driver|\/src\//i);
  });

  it('describes itself all the same', async () => {
    expect((await service.as(null).get('/api/v1/openapi.json')).status).toBe(200);
  });
});
