import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { startFilled } from '../support/every-page.js';
import type { FilledService } from '../support/every-page.js';
import { givenReferral, givenSession } from '../support/scenario.js';
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

/** Pages of the day's work that the larger sweep leaves out, on a referral that is open and on one that is closed. */
it.each([
  [
    'admin',
    [
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
  'pages of %s have no fault of access',
  async (role, paths) => {
    const open = await givenReferral(filled.service);
    const session = await givenSession(filled.service);
    const { page, complaints } = await openSignedIn(browser, filled.service, origin, role);
    for (const path of paths) {
      const address = path
        .replace('OPEN', open)
        .replace('CLOSED', filled.person.referralId)
        .replace('DISCHARGE', filled.person.dischargeId)
        .replace('SESSION', session);
      const response = await page.goto(address);
      expect(response?.status(), path).toBe(200);
      expect(await faultsOfAccess(page), path).toEqual([]);
    }
    expect(complaints).toEqual([]);
  },
  60_000,
);
