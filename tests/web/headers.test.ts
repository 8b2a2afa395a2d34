import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
beforeAll(async () => {
  service = await startApp();
});
afterAll(() => service.close());

const get = (path: string) => supertest(service.app.server).get(path).set('accept', 'text/html');

/** Written out from the rules for pages: nothing inline, nothing from elsewhere, no frame, no foreign target of a form. */
const POLICY =
  "default-src 'self';base-uri 'none';form-action 'self';frame-ancestors 'none';object-src 'none'";

describe('every page', () => {
  it.each(['/', '/account', '/no-such-page'])('%s is sent with the strict policy', async (path) => {
    const { headers } = await get(path);
    expect(headers['content-security-policy']).toBe(POLICY);
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['x-frame-options']).toBe('DENY');
    expect(headers['strict-transport-security']).toBe('max-age=31536000');
    expect(headers['cache-control']).toBe('no-store');
    expect(headers).not.toHaveProperty('x-powered-by');
  });

  it('has no script, style or handler of an event written into it', async () => {
    const { text } = await get('/no-such-page');
    expect(text).toMatch(/^<!doctype html><html lang="en-GB">/i);
    expect(text).not.toMatch(/<style|<script(?![^>]* src=)|\sstyle=|\son[a-z]+=|javascript:/i);
  });
});

describe('the API', () => {
  it('lets nothing that it answers be run, framed or kept', async () => {
    const { headers } = await service.as('lead').get('/api/v1/patients');
    expect(headers['content-security-policy']).toBe("default-src 'none'; frame-ancestors 'none'");
    expect(headers['cache-control']).toBe('no-store');
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  it('takes no form', async () => {
    const response = await supertest(service.app.server)
      .post('/api/v1/patients')
      .set('authorization', `Bearer ${service.tokens.admin}`)
      .type('form')
      .send({ familyName: 'Sandwort' });
    expect(response.status).toBe(415);
  });

  it('has documentation that runs only scripts of this service', async () => {
    const { headers } = await get('/api/v1/docs/');
    expect(headers['content-security-policy']).toContain("default-src 'self'");
    expect(headers['content-security-policy']).not.toMatch(/script-src|unsafe-eval|\*|https?:/);
  });
});

describe('assets', () => {
  it('come from the service and may be kept for ever, as their address changes with them', async () => {
    const { text } = await get('/no-such-page');
    const sheet = /href="(\/assets\/[0-9a-f]{12}\/tidemark\.css)"/.exec(text)?.[1] ?? '';
    const { headers, text: css } = await get(sheet).expect(200);
    expect(headers['content-type']).toMatch(/^text\/css/);
    expect(headers['cache-control']).toBe('public, max-age=31536000, immutable');
    const fonts = [...css.matchAll(/url\(([^)]+)\)/g)].map(([, name = '']) => name);
    expect(fonts.length).toBeGreaterThan(0);
    for (const name of fonts) {
      const font = await get(sheet.replace('tidemark.css', name)).expect(200);
      expect(font.headers['content-type']).toBe('font/woff2');
    }
  });

  it('style sheets and scripts go out compressed to whoever takes that, and mean the same', async () => {
    const folder = /(\/assets\/[0-9a-f]{12}\/)/.exec((await get('/no-such-page')).text)?.[1] ?? '';
    for (const name of ['tidemark.css', 'report.css', 'send-form.js']) {
      const packed = await get(folder + name).set('accept-encoding', 'br, gzip');
      const plain = await get(folder + name).set('accept-encoding', 'br, gzip;q=0');
      expect([packed.headers['content-encoding'], plain.headers['content-encoding']]).toEqual([
        'gzip',
        undefined,
      ]);
      expect(packed.headers['vary']).toBe('accept-encoding');
      expect(Number(packed.headers['content-length'])).toBeLessThan(plain.text.length / 2);
      expect(packed.text).toBe(plain.text);
    }
  });

  it('are those of the list, and no other file', async () => {
    const folder = /(\/assets\/[0-9a-f]{12}\/)/.exec((await get('/no-such-page')).text)?.[1] ?? '';
    for (const name of [
      '',
      '..%2fweb.js',
      'source-sans-3-latin-900-normal.woff2',
      '.env',
      'tidemark.css%00',
    ]) {
      expect((await get(folder + name)).status, name).toBeGreaterThanOrEqual(400);
    }
  });

  it('have a picture for the tab of the browser', async () => {
    const icon = await get('/favicon.ico').redirects(1);
    expect(icon.status).toBe(200);
    expect(icon.headers['content-type']).toMatch(/^image\/svg\+xml/);
  });
});
