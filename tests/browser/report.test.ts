import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, serve } from '../support/browser.js';
import { HARD_PLOTS } from '../support/hard-plots.js';
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

  it('draws no word of a plot smaller than 12 px on a small phone, none on another and none beyond the drawing', async () => {
    const { page } = await openSignedIn(browser, service, origin, 'lead', {
      viewport: { width: 360, height: 800 },
    });
    await page.goto('/report?period=2026-27-Q2');
    expect(await page.evaluate(WORDS_HARD_TO_READ)).toEqual([]);
    const drawings = HARD_PLOTS.map(({ svg }) => `<div class="plot">${svg}</div>`).join('');
    await page.evaluate(
      `document.querySelector('main .column, main').innerHTML = ${JSON.stringify(drawings)}`,
    );
    expect(await page.locator('.plot svg').count()).toBe(HARD_PLOTS.length);
    expect(await page.evaluate(WORDS_HARD_TO_READ)).toEqual([]);
  });
});

/** In the page: what of the words of its drawings is too small, meets other words, or is cut off. */
const WORDS_HARD_TO_READ = `[...document.querySelectorAll('.plot svg')].flatMap((svg) => {
  const whole = svg.getBoundingClientRect();
  const scale = whole.width / svg.viewBox.baseVal.width;
  const words = [...svg.querySelectorAll('text')].map((text) => {
    const { left, right, top, bottom } = text.getBoundingClientRect();
    const size = parseFloat(getComputedStyle(text).fontSize) * scale;
    // A line of text is higher than its letters.
    const spare = (bottom - top - size) / 2;
    return { said: text.textContent, size, left, right, top: top + spare, bottom: bottom - spare };
  });
  return words.flatMap((one, index) => [
    ...(one.size < 12 ? [one.said + ': ' + one.size + ' px'] : []),
    ...(one.left < whole.left - 1 || one.right > whole.right + 1 || one.top < whole.top - 1 || one.bottom > whole.bottom
      ? [one.said + ': cut off']
      : []),
    ...words
      .slice(index + 1)
      .filter((other) => one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom)
      .map((other) => one.said + ' meets ' + other.said),
  ]);
})`;
