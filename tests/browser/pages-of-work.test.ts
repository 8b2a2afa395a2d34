import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { LONG_NAME, startFilled } from '../support/every-page.js';
import type { FilledService } from '../support/every-page.js';
import { aReferralBody } from '../support/entries.js';
import { created, givenPatient } from '../support/scenario.js';
import { openSignedIn } from '../support/signed-in.js';
import type { TestRole } from '../support/start-app.js';

let filled: FilledService;
let origin: string;
let browser: Browser;
beforeAll(async () => {
  filled = await startFilled();
  origin = await serve(filled.service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await filled.service.close();
});

it.each([
  ['clinician', '/referrals/OPEN/triage'],
  ['admin', '/referrals/OPEN/offers'],
  ['clinician', '/referrals/OPEN/planned-start'],
  ['admin', '/classes/new'],
  ['clinician', '/referrals/OPEN/closing'],
] satisfies readonly (readonly [TestRole, string])[])(
  'what is wrong is told to everybody on a phone, light and dark, when %s sends %s empty',
  async (role, path) => {
    const patientId = await givenPatient(filled.service, LONG_NAME);
    const open = await created(
      filled.service,
      '/api/v1/referrals',
      aReferralBody(patientId, filled.service.siteId),
    );
    const { page, context } = await openSignedIn(browser, filled.service, origin, role, {
      viewport: { width: 390, height: 800 },
    });
    await page.goto(path.replace('OPEN', open));
    for (const field of await page
      .locator('main form[method=post] input:is(:not([type]), [type=text]):visible')
      .all())
      await field.fill('');
    await page.locator('main form[method=post] button:not([type=button])').last().click();
    await page.getByRole('alert').waitFor();
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await faultsOfAccess(page, ['color-contrast'])).toEqual([]);
    expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390);
    await context.close();
  },
);

it('the place somebody is at can be told when the system sets the colours', async () => {
  const { page, context } = await openSignedIn(browser, filled.service, origin, 'admin');
  await page.emulateMedia({ forcedColors: 'active' });
  await page.goto('/work-list');
  const lines = await page.evaluate<string[]>(
    `[...document.querySelectorAll('.places a')].map((place) => getComputedStyle(place).borderBottomColor)`,
  );
  expect(lines.filter((line) => line === lines[0])).toHaveLength(1);
  await context.close();
});
