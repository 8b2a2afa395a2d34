import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { aPatient } from '../support/entries.js';
import { asRecord, itemsOf } from '../support/response.js';
import { created } from '../support/scenario.js';
import { openSignedIn } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
let service: TestApp;
let origin: string;
let browser: Browser;

beforeAll(async () => {
  service = await startApp();
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

async function openForm(options = {}) {
  const watched = await openSignedIn(browser, service, origin, 'admin', options);
  await watched.page.goto('/referrals/new');
  return watched;
}

/** Moves on with the tabulator key to the field of a label. */
async function tabTo(page: Page, label: string): Promise<void> {
  for (let steps = 0; steps < 60; steps += 1) {
    await page.keyboard.press('Tab');
    const focused = await page.evaluate(
      '(document.activeElement.labels?.[0] ?? document.activeElement).textContent.trim()',
    );
    if (focused === label) return;
  }
  throw new Error(`The keyboard does not reach ${label}.`);
}

async function type(page: Page, label: string, text: string): Promise<void> {
  await tabTo(page, label);
  await page.keyboard.type(text);
}

async function referrals(): Promise<readonly Record<string, unknown>[]> {
  return itemsOf(await service.as('lead').get('/api/v1/referrals?limit=200'));
}

/** Fills in what must be filled in. */
async function fill(page: Page, familyName: string): Promise<void> {
  await page.getByLabel('If there is no NHS number: why').selectOption('not-yet-traced');
  await page.getByLabel('Family name').fill(familyName);
  await page.getByLabel('Given name').fill('Maeve');
  await page.getByLabel('Day').first().fill('1');
  await page.getByLabel('Month').first().fill('2');
  await page.getByLabel('Year', { exact: true }).first().fill('1950');
  await page.getByLabel('Female', { exact: true }).check();
  await page.getByLabel('Referred by', { exact: true }).selectOption('hospital-ward');
  await page.getByLabel('Main respiratory diagnosis').selectOption('copd');
  await page.getByLabel('Stable disease').check();
  await page.getByLabel('Dune Hall').check();
}

const send = (page: Page): Promise<void> =>
  page.getByRole('button', { name: 'Register the referral' }).click();

describe('an administrator', () => {
  it('registers a referral by keyboard alone', async () => {
    const { page, complaints } = await openForm();
    await type(page, 'NHS number', '999 000 0042');
    await type(page, 'Family name', 'Eyebright');
    await type(page, 'Given name', 'Tansy');
    await type(page, 'Day', '9');
    await type(page, 'Month', '3');
    await type(page, 'Year', '1954');
    await tabTo(page, 'Look this person up');
    await page.keyboard.press('Enter');
    await page.getByText('Not known to your team yet').waitFor();
    await page.locator('#look-up').focus();
    await tabTo(page, 'Female');
    await page.keyboard.press('Space');
    await type(page, 'Ethnic category', 'White: B');
    await type(page, 'Referred by', 'General');
    await type(page, 'Main respiratory diagnosis', 'COPD');
    await tabTo(page, 'Stable disease');
    await page.keyboard.press('ArrowDown');
    await type(page, 'Day', '20');
    await type(page, 'Month', '11');
    await type(page, 'Year', '2026');
    await tabTo(page, 'Dune Hall');
    await page.keyboard.press('Space');
    await tabTo(page, 'Register the referral');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/referrals\/[0-9a-f-]{36}$/);
    const [referral] = await referrals();
    expect(referral).toMatchObject({
      receivedOn: '2026-11-25',
      source: 'general-practice',
      diagnosis: 'copd',
      pathway: 'after-exacerbation',
      hospitalDischargedOn: '2026-11-20',
      siteId: service.siteId,
    });
    const patient = await service.as('lead').get(`/api/v1/patients/${String(referral?.['patientId'])}`);
    expect(asRecord(patient.body)).toMatchObject({
      nhsNumber: '9990000042',
      familyName: 'Eyebright',
      givenName: 'Tansy',
      bornOn: '1954-03-09',
      ethnicCategory: 'A',
      gender: 'not-known',
    });
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('is asked for the discharge from hospital after an exacerbation only', async () => {
    const { page } = await openForm();
    const asked = page.getByText('Discharged from hospital on');
    expect(await asked.isVisible()).toBe(false);
    await page.getByLabel('After an exacerbation').check();
    expect(await asked.isVisible()).toBe(true);
    await page.context().close();
  });

  it('is led to what is wrong, with everything typed still there, accessible in every state', async () => {
    const { page, complaints } = await openForm();
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.getByLabel('Family name').fill('\u05e9\u05d5\u05e9\u05e0\u05d4');
    await page.getByLabel('Given name').fill('A'.repeat(100));
    await send(page);
    await page.getByText('Nothing was stored: please mend this first').waitFor();
    expect(await page.evaluate('document.activeElement.getAttribute("role")')).toBe('alert');
    expect(await page.title()).toMatch(/^Error: /);
    expect(await page.getByLabel('Family name').inputValue()).toBe('\u05e9\u05d5\u05e9\u05e0\u05d4');
    expect(await page.getByLabel('Given name').inputValue()).toBe('A'.repeat(100));
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await faultsOfAccess(page, ['color-contrast'])).toEqual([]);
    await page.getByRole('link', { name: 'Choose the pathway.' }).click();
    expect(await page.evaluate('document.activeElement.name')).toBe('pathway');
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it('sees whom the team knows before anything is stored', async () => {
    const patientId = await created(
      service,
      '/api/v1/patients',
      aPatient({
        nhsNumber: null,
        nhsNumberMissingReason: 'declined',
        familyName: 'Bindweed',
        bornOn: '1950-02-01',
      }),
    );
    const { page } = await openForm();
    await fill(page, 'Bindweed');
    await send(page);
    await page.getByText('Your team may know this person already').first().waitFor();
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.getByLabel(/^Mavis Bindweed, born 1 February 1950/).check();
    await send(page);
    await page.waitForURL(/\/referrals\/[0-9a-f-]{36}$/);
    expect((await referrals()).filter((each) => each['patientId'] === patientId)).toHaveLength(1);
    await page.context().close();
  });

  it('makes one record with two presses of the button', async () => {
    const { page } = await openForm();
    await fill(page, 'Doublet');
    const before = (await referrals()).length;
    await page.getByRole('button', { name: 'Register the referral' }).dblclick();
    await page.waitForURL(/\/referrals\/[0-9a-f-]{36}$/);
    expect(await referrals()).toHaveLength(before + 1);
    await page.context().close();
  });

  it('loses nothing that was typed when the connection is lost', async () => {
    const { page, context } = await openForm();
    await fill(page, 'Offline');
    await page.getByLabel('Given name').fill('Ottilie');
    await context.setOffline(true);
    await send(page);
    await page.getByText('Not stored: there is no connection').waitFor();
    expect(await page.getByLabel('Family name').inputValue()).toBe('Offline');
    expect(await faultsOfAccess(page)).toEqual([]);
    await context.setOffline(false);
    await send(page);
    await page.waitForURL(/\/referrals\/[0-9a-f-]{36}$/);
    await context.close();
  });

  it('registers a referral without a script', async () => {
    const { page } = await openForm({ javaScriptEnabled: false });
    await fill(page, 'Scriptless');
    await page.getByLabel('Given name').fill('Myrtle');
    await page.getByLabel('Day').first().fill('3');
    await send(page);
    await page.waitForURL(/\/referrals\/[0-9a-f-]{36}$/);
    await page.context().close();
  });
});
