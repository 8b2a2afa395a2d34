import { TOTP } from 'otpauth';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, openPage, serve } from '../support/browser.js';
import { movingClock } from '../support/moving-clock.js';
import type { MovingClock } from '../support/moving-clock.js';
import { givenPerson, PASSPHRASE } from '../support/people.js';
import { openSignedIn } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

const NAME = 'h.turnstone';
const SECOND_NAME = 'r.knot';

let service: TestApp;
let clock: MovingClock;
let origin: string;
let browser: Browser;
beforeAll(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
  await givenPerson(service.record.context, { role: 'clinician', teamId: service.teamId }, NAME);
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

describe('signing in with a browser', () => {
  it('works by keyboard alone, from a page that was asked for and back to it', async () => {
    const { page, complaints } = await openPage(browser, origin);
    await page.goto('/work-list?a=b');
    expect(new URL(page.url()).pathname).toBe('/sign-in');
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.textContent.trim()')).toBe('Skip to the content');
    await page.getByLabel('Sign-in name').focus();
    await page.keyboard.type(NAME);
    await page.keyboard.press('Tab');
    await page.keyboard.type(PASSPHRASE);
    await page.keyboard.press('Enter');
    await page.waitForURL('**/work-list?a=b');
    expect(await page.locator('header .who').textContent()).toContain('Person h.turnstone');
    expect(complaints).toEqual([]);
    await page.getByRole('button', { name: 'Sign out' }).click();
    await page.waitForURL('**/sign-in');
    await page.goto('/work-list');
    expect(new URL(page.url()).pathname).toBe('/sign-in');
  });

  it('says what is wrong at the top, keeps the name and never the passphrase', async () => {
    const { page } = await openPage(browser, origin);
    await page.goto('/sign-in');
    await page.getByLabel('Sign-in name').fill(NAME);
    await page.getByLabel('Passphrase').fill('sandpiper below the mudflat');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await expectText(page, '[role=alert]', 'The sign-in name or the passphrase is not right');
    expect(await page.getByLabel('Sign-in name').inputValue()).toBe(NAME);
    expect(await page.getByLabel('Passphrase').inputValue()).toBe('');
    expect(await faultsOfAccess(page)).toEqual([]);
  });

  it('without JavaScript', async () => {
    const { page } = await openPage(browser, origin, { javaScriptEnabled: false });
    await page.goto('/sign-in');
    await page.getByLabel('Sign-in name').fill(NAME);
    await page.getByLabel('Passphrase').fill(PASSPHRASE);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL('**/work-list');
  });

  it('a form of another site is refused', async () => {
    const { page } = await openSignedIn(browser, service, origin, 'lead');
    await page.goto('/work-list');
    await page.evaluate(
      `for (const field of document.querySelectorAll('[name=_csrf]')) field.setAttribute('value', 'forged')`,
    );
    await page.getByRole('button', { name: 'Sign out' }).click();
    await expectText(page, 'h1', 'This form can no longer be used');
    await page.goto('/work-list');
    expect(new URL(page.url()).pathname).toBe('/work-list');
  });

  it('with a second factor: set up by its key, asked for by its code, and a wrong code is refused', async () => {
    await givenPerson(service.record.context, { role: 'clinician', teamId: service.teamId }, SECOND_NAME);
    const signIn = async (): Promise<Page> => {
      const { page } = await openPage(browser, origin);
      await page.goto('/sign-in');
      await page.getByLabel('Sign-in name').fill(SECOND_NAME);
      await page.getByLabel('Passphrase').fill(PASSPHRASE);
      await page.getByRole('button', { name: 'Sign in' }).click();
      return page;
    };
    const first = await signIn();
    await first.waitForURL('**/work-list');
    await first.goto('/account/second-factor');
    await first.getByRole('button', { name: 'Begin' }).click();
    const shown = await first.locator('.code').first().textContent();
    const secret = (shown ?? '').replaceAll(/\s/g, '');
    const code = (): string =>
      new TOTP({ secret, algorithm: 'SHA1', digits: 6, period: 30 }).generate({
        timestamp: Date.parse(clock.now()),
      });
    expect(await faultsOfAccess(first)).toEqual([]);
    await first.getByLabel('Code of six digits').fill(code());
    await first.getByRole('button', { name: 'Set up' }).click();
    await first.waitForLoadState();
    await first.goto('/account/second-factor/removal');
    expect(await faultsOfAccess(first)).toEqual([]);

    clock.moveBy(60);
    const second = await signIn();
    await second.waitForURL('**/sign-in/code**');
    expect(await faultsOfAccess(second)).toEqual([]);
    await second.getByLabel('Code of six digits').fill('12345');
    await second.getByRole('button', { name: 'Go on' }).click();
    expect(new URL(second.url()).pathname).toBe('/sign-in/code');
    expect(await second.locator('.error, [role=alert]').count()).toBeGreaterThan(0);
    await second.getByLabel('Code of six digits').fill(code());
    await second.getByRole('button', { name: 'Go on' }).click();
    await second.waitForURL('**/work-list');
  });

  it('is asked for again when nobody has used the page for half an hour', async () => {
    const { page } = await openSignedIn(browser, service, origin, 'clinician');
    await page.goto('/work-list');
    clock.moveBy(30 * 60);
    await page.goto('/work-list?c=d');
    await expectText(page, 'main', 'Your session has ended');
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.getByLabel('Sign-in name').fill(NAME);
    await page.getByLabel('Passphrase').fill(PASSPHRASE);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.waitForURL('**/work-list?c=d');
  });

  it('and what was typed meanwhile is in its form again, without JavaScript', async () => {
    const typed = 'Old Sluice "east" & <west>';
    await givenPerson(service.record.context, { role: 'admin', teamId: service.teamId }, 'd.plover');
    const { page, context } = await openPage(browser, origin, { javaScriptEnabled: false });
    const signIn = async (): Promise<void> => {
      await page.getByLabel('Sign-in name').fill('d.plover');
      await page.getByLabel('Passphrase').fill(PASSPHRASE);
      await page.getByRole('button', { name: 'Sign in' }).click();
    };
    await page.goto('/sign-in?next=/referrals/new');
    await signIn();
    await page.getByLabel('Family name').fill(typed);
    clock.moveBy(30 * 60);
    await page.getByRole('button', { name: 'Register the referral' }).click();
    await expectText(page, 'main', 'it is not lost');
    expect(await page.content()).not.toContain('Old Sluice');
    await signIn();
    await page.waitForURL('**/referrals/new');
    await expectText(page, 'main [role=status]', 'What you typed is in the form again');
    expect(await page.getByLabel('Family name').inputValue()).toBe(typed);
    await context.close();
  });
});

async function expectText(page: Page, selector: string, text: string): Promise<void> {
  await page.waitForSelector(selector);
  expect(await page.locator(selector).first().textContent()).toContain(text);
}
