import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, serve } from '../support/browser.js';
import { readPdf } from '../support/read-pdf.js';
import { givenReferral } from '../support/scenario.js';
import { openSignedIn } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
let origin: string;
let browser: Browser;
beforeAll(async () => {
  service = await startApp();
  await givenReferral(service, { receivedOn: '2026-07-06', diagnosis: 'copd' });
  await givenReferral(service, { receivedOn: '2026-08-03', diagnosis: 'asthma' });
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

describe('the report in a browser', () => {
  it('is opened by the lead at the latest quarter, from a figure to a person behind it and back, without a script', async () => {
    const { page, complaints } = await openSignedIn(browser, service, origin, 'lead', {
      javaScriptEnabled: false,
    });
    await page.goto('/work-list');
    await page.getByRole('link', { name: 'Report' }).click();
    await page.waitForURL('**/report?period=2026-27-Q2');
    const steps = page.getByRole('region', { name: /^Reached each step/ });
    await steps.getByRole('link').first().click();
    await page.waitForURL('**/report/figures/funnel.referred?period=2026-27-Q2');
    const people = page.getByRole('region', { name: /^Referrals behind/ }).getByRole('link');
    expect(await people.count()).toBe(2);
    const name = (await people.first().textContent()) ?? '';
    await people.first().click();
    await page.waitForURL(/\/referrals\/[0-9a-f-]{36}$/);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain(name);
    await page.goBack();
    await page.getByRole('link', { name: 'Report 2026-27-Q2' }).click();
    await page.waitForURL('**/report?period=2026-27-Q2');
    await page.getByRole('link', { name: 'For whom it differs' }).click();
    await page.getByRole('link', { name: /^Referred: / }).click();
    await page.waitForURL('**/report/chapters/breakdowns/funnel.referred?period=2026-27-Q2');
    await page
      .getByRole('region', { name: /sex at birth/ })
      .getByRole('link')
      .first()
      .click();
    await page.waitForURL('**/report/figures/*?period=2026-27-Q2');
    expect(complaints).toEqual([]);
  });

  it('is narrowed by its form, and the address says by what', async () => {
    const { page } = await openSignedIn(browser, service, origin, 'lead');
    await page.goto('/report?period=2026-27-Q2');
    await page.getByText('Narrow the report').click();
    await page.getByLabel('Diagnosis', { exact: true }).selectOption('asthma');
    await page.getByRole('button', { name: 'Show the report' }).click();
    await page.waitForURL('**/report?period=2026-27-Q2&diagnosis=asthma');
    await page.getByText('1 referral was received').waitFor();
  });

  it.each(['PDF', 'Spreadsheet (XLSX)', 'CSV', 'JSON', 'Text'])('is taken away as %s', async (form) => {
    const { page } = await openSignedIn(browser, service, origin, 'lead');
    await page.goto('/report?period=2026-27-Q2');
    const coming = page.waitForEvent('download');
    await page.getByRole('link', { name: form, exact: true }).click();
    const file = await coming;
    expect(file.suggestedFilename()).toMatch(/^report-2026-27-Q2-as-at-2026-11-25\.[a-z]+$/);
    expect(await file.failure()).toBeNull();
  });

  it('prints on few sheets, each with its number and the data cut', async () => {
    const { page } = await openSignedIn(browser, service, origin, 'lead');
    await page.goto('/report?period=2026-27-Q2');
    const { pages } = await readPdf(await page.pdf({ preferCSSPageSize: true }));
    expect(pages.length).toBeLessThan(10);
    pages.forEach((sheet, index) => {
      expect(sheet).toContain(`Page ${index + 1} of ${pages.length}`);
      expect(sheet).toContain('Data cut 25 November 2026');
    });
    expect(pages.join(' ')).not.toContain('Show the report');
  });

  it.each([
    [1200, 'beside'],
    [1199, 'below'],
  ])('has every table at %d px %s its drawing, and none that moves sideways', async (width, place) => {
    const { page } = await openSignedIn(browser, service, origin, 'lead', {
      viewport: { width, height: 900 },
    });
    await page.goto('/report?period=2026-27-Q2');
    const figures = await page.evaluate<
      readonly (readonly [string, boolean])[]
    >(`[...document.querySelectorAll('.report figure')].map((figure) => {
      const plot = figure.querySelector('.plot').getBoundingClientRect();
      const table = figure.querySelector('.table');
      const { top, left } = table.getBoundingClientRect();
      const isBeside = left >= plot.right && top < plot.bottom;
      const isBelow = left === plot.left && top >= plot.bottom;
      const place = isBeside ? 'beside' : isBelow ? 'below' : 'elsewhere';
      return [place, table.scrollWidth > table.clientWidth];
    })`);
    expect(figures.length).toBeGreaterThan(2);
    expect(figures.filter(([where, moves]) => where !== place || moves)).toEqual([]);
  });

  it('fits a phone', async () => {
    const { page, complaints } = await openSignedIn(browser, service, origin, 'lead', {
      viewport: { width: 390, height: 800 },
    });
    await page.goto('/report?period=2026-27-Q2');
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
    expect(complaints).toEqual([]);
  });
});
