import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { startFilled } from '../support/every-page.js';
import type { FilledService } from '../support/every-page.js';
import { aReferralBody } from '../support/entries.js';
import { created, givenPatient, givenSession } from '../support/scenario.js';
import { openSignedIn } from '../support/signed-in.js';
import type { TestRole } from '../support/start-app.js';

/** A page at 400 % zoom of a screen 1280 px wide (WCAG 2.2, 1.4.10). */
const ZOOMED = { width: 320, height: 256 } as const;
/** Long, without a space to break at, and written from right to left. */
const LONG_NAME = {
  familyName: 'الصخرة-العالية-فوق-البحر-الازرق-البعيد-جدا',
  givenName: 'Wilhelmina-Persephone-Marigold-Evangeline',
};

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

/** Pages of the day's work that the larger sweep leaves out, of somebody with a long name and of one who is closed. */
it.each([
  [
    'admin',
    [
      '/work-list',
      '/referrals/OPEN',
      '/referrals/OPEN/history',
      '/referrals/new',
      '/classes/new',
      '/classes/SESSION',
      '/classes/SESSION/entered-in-error',
      '/referrals/OPEN/offers',
      '/referrals/OPEN/closing',
    ],
  ],
  [
    'clinician',
    [
      '/referrals/OPEN/triage',
      '/referrals/OPEN/planned-start',
      '/referrals/OPEN/assessments/baseline',
      '/referrals/OPEN/closing',
      '/referrals/CLOSED/closing',
      '/referrals/CLOSED/letters/gp',
      '/referrals/CLOSED/figures',
      '/assessments/DISCHARGE/correction',
      '/assessments/DISCHARGE/history',
      '/definitions/indicators',
    ],
  ],
  ['lead', ['/imports', '/report', '/releases']],
] satisfies readonly (readonly [TestRole, readonly string[]])[])(
  'pages of %s have no fault of access, and fit at 400 % zoom, whatever the name',
  async (role, paths) => {
    const patientId = await givenPatient(filled.service, LONG_NAME);
    const open = await created(
      filled.service,
      '/api/v1/referrals',
      aReferralBody(patientId, filled.service.siteId),
    );
    const session = await givenSession(filled.service);
    const { page, context, complaints } = await openSignedIn(browser, filled.service, origin, role);
    const desk = page.viewportSize() ?? { width: 1280, height: 720 };
    for (const path of paths) {
      const address = path
        .replace('OPEN', open)
        .replace('CLOSED', filled.person.referralId)
        .replace('DISCHARGE', filled.person.dischargeId)
        .replace('SESSION', session);
      const response = await page.goto(address);
      expect(response?.status(), path).toBe(200);
      expect(await faultsOfAccess(page), path).toEqual([]);
      await page.setViewportSize(ZOOMED);
      expect(await page.evaluate<number>('document.documentElement.scrollWidth'), path).toBeLessThanOrEqual(
        ZOOMED.width,
      );
      await page.setViewportSize(desk);
    }
    expect(complaints).toEqual([]);
    await context.close();
  },
  60_000,
);

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
    for (const field of await page.locator('main form[method=post] input[type=text]').all())
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
