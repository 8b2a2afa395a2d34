import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { aPatient, aReferralBody } from '../support/entries.js';
import { created, givenReferral, givenSession, givenTriagedReferral } from '../support/scenario.js';
import { openSignedIn } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
let service: TestApp;
let origin: string;
let browser: Browser;
let untriaged: string;

beforeAll(async () => {
  service = await startApp();
  untriaged = await givenReferral(service, { receivedOn: '2026-11-16' });
  await givenTriagedReferral(service);
  await givenSession(service, { heldOn: '2026-11-25' });
  const person = {
    nhsNumber: '9990000034',
    familyName: '\u05e9\u05d5\u05e9\u05e0\u05d4 '.repeat(6).trim(),
    givenName: 'Featherstonehaugh-Cholmondeley-Marjoribanks',
  };
  const patientId = await created(service, '/api/v1/patients', aPatient(person));
  const body = { receivedOn: '2026-11-20', diagnosis: 'asthma', siteId: service.secondSiteId };
  await created(service, '/api/v1/referrals', aReferralBody(patientId, service.siteId, body));
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

describe('the work list', () => {
  it.each([320, 820, 1440])('is accessible and fits a screen %i px wide', async (width) => {
    const viewport = { width, height: 900 };
    const { page, complaints } = await openSignedIn(browser, service, origin, 'clinician', { viewport });
    await page.goto('/');
    expect(new URL(page.url()).pathname).toBe('/work-list');
    expect(await faultsOfAccess(page)).toEqual([]);
    const isWider = await page.evaluate(
      'document.documentElement.scrollWidth > document.documentElement.clientWidth',
    );
    expect(isWider).toBe(false);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('is narrowed, keeps the filter in the address, and leads to the page of the work', async () => {
    const { page } = await openSignedIn(browser, service, origin, 'clinician');
    await page.goto('/work-list');
    await page.getByLabel('Diagnosis').selectOption('asthma');
    await page.getByRole('button', { name: 'Show' }).click();
    expect(new URL(page.url()).searchParams.get('diagnosis')).toBe('asthma');
    expect(await page.locator('tbody tr:not(.group) a[href$="/triage"]').count()).toBe(1);
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.reload();
    expect(await page.getByLabel('Diagnosis').inputValue()).toBe('asthma');
    await page.getByRole('link', { name: 'Show everything' }).click();
    await page.locator(`a[href="/referrals/${untriaged}/triage"]`).first().click();
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Triage');
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.getByLabel('Accepted').check();
    await page.getByRole('button', { name: 'Record the decision' }).click();
    await page.waitForURL('**/offers');
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.context().close();
  });

  it('finds a person from the top of every page, and nothing typed stands in an address', async () => {
    const { page } = await openSignedIn(browser, service, origin, 'admin', { colorScheme: 'dark' });
    const addresses: string[] = [];
    page.on('request', (request) => addresses.push(request.url()));
    await page.goto('/work-list');
    await page.getByLabel('Name, NHS number or date of birth').fill('999 000 0034');
    await page.keyboard.press('Enter');
    await page.getByText('1 person found').waitFor();
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.reload();
    await page.getByText('1 person found').waitFor();
    expect(addresses.filter((address) => /999|0034/.test(address.slice(origin.length)))).toEqual([]);
    await page.goto('/search');
    await page.locator('#field-q').fill('Nobody');
    await page.getByRole('main').getByRole('button', { name: 'Find' }).click();
    await page.getByText('Nobody of your team fits').waitFor();
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.context().close();
  });

  it('leads to the classes of the week, and to a new one', async () => {
    const { page } = await openSignedIn(browser, service, origin, 'admin', { forcedColors: 'active' });
    await page.goto('/classes');
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.getByRole('link', { name: 'New class' }).click();
    await page.getByLabel('Saltmarsh Centre').check();
    await page.getByRole('button', { name: 'Open the register' }).click();
    await page.waitForURL(/\/classes\/[0-9a-f-]{36}$/);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('Saltmarsh Centre, today');
    await page.context().close();
  });
});
