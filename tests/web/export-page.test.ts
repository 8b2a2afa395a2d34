import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
let lead: PageClient;
beforeAll(async () => {
  service = await startApp();
  lead = await pagesAs(service, 'lead');
});
afterAll(() => service.close());

describe('the page by which the record is taken out', () => {
  it('says whom the files name, and leads to each', async () => {
    const { text } = await lead.get('/team/export');
    expect(text).toContain('These files name people');
    expect(text).toContain('they fit no other file');
    for (const form of ['zip', 'json']) {
      expect(text).toContain(`href="/team/export/record/${form}"`);
      const { status, headers } = await lead.get(`/team/export/record/${form}`);
      expect([status, headers['content-disposition']]).toEqual([
        200,
        `attachment; filename="record-2026-11-25.${form}"`,
      ]);
    }
    expect((await lead.get('/team/export/record/pdf')).status).toBe(404);
  });

  it('gives the file for analysis by its form, and keeps what was typed where the period is none', async () => {
    const asked = 'dates=day&ages=years';
    const file = await lead.get(`/team/export/analysis?${asked}&received=`);
    expect(file.headers['content-disposition']).toBe('attachment; filename="analysis-2026-11-25.zip"');
    const { status, text } = await lead.get(`/team/export/analysis?${asked}&received=last+spring`);
    expect(status).toBe(422);
    expect(text).toContain('Nothing was taken out');
    expect(text).toContain('value="last spring"');
    expect(text).toMatch(/value="day" checked/);
  });

  it('is for leads', async () => {
    for (const role of ['admin', 'clinician', 'commissioner'] as const) {
      const pages = await pagesAs(service, role);
      for (const path of ['/team/export', '/team/export/record/zip', '/team/export/analysis'])
        expect((await pages.get(path)).status, `${role} ${path}`).toBe(403);
    }
  });
});
