import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { aPatient, aReferralBody } from '../support/entries.js';
import { asRecord, asRecords } from '../support/response.js';
import { created, givenSession } from '../support/scenario.js';
import { openSignedIn } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

/** Today is Wednesday 25 November 2026. */
const TODAY = '2026-11-25';
const PEOPLE = 12;
const LONG_NAME = 'Featherstonehaugh-Cholmondeley-Marjoribanks of Saltmarsh and the Further Dunes';
const RIGHT_TO_LEFT = '\u05e9\u05d5\u05e9\u05e0\u05d4';

let service: TestApp;
let origin: string;
let browser: Browser;
/** Referrals at the first site, and at the second. */
const first: string[] = [];
const second: string[] = [];

beforeAll(async () => {
  service = await startApp();
  for (let index = 0; index < PEOPLE; index += 1) {
    const family = index === 0 ? LONG_NAME : index === 1 ? RIGHT_TO_LEFT : `Plover${index}`;
    first.push(await givenComing(family, service.siteId));
  }
  for (const family of ['Ruff', 'Smew', 'Teal']) second.push(await givenComing(family, service.secondSiteId));
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

/** Somebody whose start is planned for today. */
async function givenComing(familyName: string, siteId: string): Promise<string> {
  const person = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced', familyName };
  const patientId = await created(service, '/api/v1/patients', aPatient(person));
  const body = { receivedOn: '2026-10-01', plannedStartOn: TODAY };
  const referralId = await created(service, '/api/v1/referrals', aReferralBody(patientId, siteId, body));
  const triage = { decision: 'accepted', decidedOn: '2026-10-02' };
  await created(service, `/api/v1/referrals/${referralId}/triage`, triage);
  return referralId;
}

async function registerOf(sessionId: string): Promise<ReadonlyMap<string, unknown>> {
  const answer = await service.as('lead').get(`/api/v1/sessions/${sessionId}`);
  const entries = asRecords(asRecord(answer.body)['attendances']);
  return new Map(entries.map((entry) => [String(entry['referralId']), entry['outcome']]));
}

async function open(sessionId: string, role: 'admin' | 'clinician', options = {}) {
  const watched = await openSignedIn(browser, service, origin, role, options);
  await watched.page.goto(`/classes/${sessionId}`);
  return watched;
}

function tap(page: Page, referralId: string | undefined, outcome: string): Promise<void> {
  return page.locator(`#tap-${referralId ?? ''}-${outcome}`).click();
}

async function givenClass(siteId: string): Promise<string> {
  return givenSession(service, { heldOn: TODAY, siteId });
}

/** Takes everybody off again, so that they are expected at the class of the next test. */
async function emptied(sessionId: string): Promise<void> {
  await service.as('lead').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances: [] });
}

describe('a class of twelve', () => {
  it('is registered in twelve taps as quick as they come, without the page being left', async () => {
    const sessionId = await givenClass(service.siteId);
    const { page, complaints } = await open(sessionId, 'clinician', {
      viewport: { width: 820, height: 1180 },
    });
    expect(await faultsOfAccess(page)).toEqual([]);
    let loads = 0;
    page.on('load', () => (loads += 1));
    for (const referralId of first) await tap(page, referralId, 'attended');
    await page.getByText('everybody is marked').waitFor();
    expect(loads).toBe(0);
    expect(await registerOf(sessionId)).toEqual(new Map(first.map((id) => [id, 'attended'])));
    expect(await page.locator('[aria-pressed=true]').count()).toBe(PEOPLE);
    expect(await faultsOfAccess(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
    await emptied(sessionId);
  });

  it('is registered in twelve taps without a script', async () => {
    const sessionId = await givenClass(service.siteId);
    const { page } = await open(sessionId, 'admin', { javaScriptEnabled: false });
    for (const referralId of first) await tap(page, referralId, 'did-not-attend');
    await page.getByText('everybody is marked').waitFor();
    expect(await registerOf(sessionId)).toEqual(new Map(first.map((id) => [id, 'did-not-attend'])));
    await page.context().close();
    await emptied(sessionId);
  });

  it('fits a phone, whatever the names', async () => {
    const sessionId = await givenClass(service.siteId);
    const { page } = await open(sessionId, 'admin', { viewport: { width: 320, height: 700 } });
    expect(await faultsOfAccess(page)).toEqual([]);
    const isWider = await page.evaluate(
      'document.documentElement.scrollWidth > document.documentElement.clientWidth',
    );
    expect(isWider).toBe(false);
    await page.context().close();
  });
});

describe('a register', () => {
  it('says in words that somebody else was quicker, and takes the tap again', async () => {
    const sessionId = await givenClass(service.secondSiteId);
    const one = await open(sessionId, 'admin');
    const other = await open(sessionId, 'clinician');
    await tap(other.page, second[0], 'attended');
    await other.page.getByText('1 attended').waitFor();
    await tap(one.page, second[1], 'attended');
    const alert = one.page.locator('[role=alert]');
    await alert.waitFor();
    expect(await alert.textContent()).toContain('Test clinician changed it on 25 November 2026, 10:00');
    expect(await alert.textContent()).toContain('Your last tap was not stored (Mavis Smew: attended)');
    expect(await registerOf(sessionId)).toEqual(new Map([[second[0], 'attended']]));
    expect(await faultsOfAccess(one.page)).toEqual([]);
    await tap(one.page, second[1], 'attended');
    await one.page.getByText('2 attended').waitFor();
    expect((await registerOf(sessionId)).size).toBe(2);
    await one.page.context().close();
    await other.page.context().close();
    await emptied(sessionId);
  });

  it('keeps taps while the connection is lost, says so, and stores them when it is back', async () => {
    const sessionId = await givenClass(service.secondSiteId);
    const { page, context } = await open(sessionId, 'admin');
    await context.setOffline(true);
    await tap(page, second[0], 'attended');
    const alert = page.locator('[role=alert]');
    await alert.waitFor();
    await tap(page, second[1], 'cancelled-by-patient');
    await page.getByText('Mavis Ruff: attended; Mavis Smew: cancelled by patient').waitFor();
    expect(await alert.textContent()).toContain('Not stored: there is no connection');
    expect((await registerOf(sessionId)).size).toBe(0);
    await context.setOffline(false);
    await page.getByText('1 attended, 1 cancelled by patient').waitFor();
    expect(await page.locator('[role=alert]').count()).toBe(0);
    expect(await registerOf(sessionId)).toEqual(
      new Map([
        [second[0], 'attended'],
        [second[1], 'cancelled-by-patient'],
      ]),
    );
    await context.close();
    await emptied(sessionId);
  });

  it('asks before everybody who is marked already is cancelled, and takes marks back', async () => {
    const sessionId = await givenClass(service.secondSiteId);
    const { page } = await open(sessionId, 'admin');
    await tap(page, second[0], 'attended');
    await page.getByText('1 attended').waitFor();
    await page.getByRole('button', { name: 'Cancelled by the service for all' }).click();
    await page.getByText('Some people are marked already').waitFor();
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.getByRole('button', { name: 'Yes, cancelled by the service for all' }).click();
    await page.getByText('3 cancelled by the service').waitFor();
    expect(new Set((await registerOf(sessionId)).values())).toEqual(new Set(['cancelled-by-service']));
    await tap(page, second[0], 'none');
    await page.getByText('1 not marked yet').waitFor();
    expect((await registerOf(sessionId)).has(second[0] ?? '')).toBe(false);
    await page.context().close();
    await emptied(sessionId);
  });

  it('says that the session has ended, and goes on after signing in on another tab', async () => {
    const sessionId = await givenClass(service.secondSiteId);
    const { page, context } = await open(sessionId, 'admin');
    const cookies = await context.cookies(origin.replace('http:', 'https:'));
    await context.clearCookies({ name: '__Host-tidemark' });
    await tap(page, second[0], 'attended');
    await page.getByText('Not stored: your session has ended').waitFor();
    expect(await faultsOfAccess(page)).toEqual([]);
    await context.addCookies(cookies.filter(({ name }) => name === '__Host-tidemark'));
    await tap(page, second[0], 'attended');
    await page.getByText('1 attended').waitFor();
    await context.close();
    await emptied(sessionId);
  });

  it('finds somebody who was not expected', async () => {
    const sessionId = await givenClass(service.secondSiteId);
    const { page } = await open(sessionId, 'admin');
    await page.locator('#field-q').fill('Plover5');
    await page.getByRole('main').getByRole('button', { name: 'Find' }).click();
    await page.getByRole('button', { name: /^Attended.*Plover5$/ }).click();
    await page.locator(`#person-${first[5] ?? ''}`).waitFor();
    expect(await registerOf(sessionId)).toEqual(new Map([[first[5], 'attended']]));
    await page.context().close();
  });
});
