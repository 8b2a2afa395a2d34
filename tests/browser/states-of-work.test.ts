import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { LONG_NAME, startFilled } from '../support/every-page.js';
import type { FilledService } from '../support/every-page.js';
import { aReferralBody } from '../support/entries.js';
import { created, givenPatient, givenSession } from '../support/scenario.js';
import { openSignedIn } from '../support/signed-in.js';
import type { TestRole } from '../support/start-app.js';

/** A page at 400 % zoom of a screen 1280 px wide (WCAG 2.2, 1.4.10). */
const ZOOMED = { width: 320, height: 256 } as const;

let filled: FilledService;
let origin: string;
let browser: Browser;
/** A class that is over, with somebody of a long name marked on its register. */
let pastClassId: string;
beforeAll(async () => {
  filled = await startFilled();
  const { service } = filled;
  const patientId = await givenPatient(service, LONG_NAME);
  const received = { receivedOn: '2026-03-01' };
  const referralId = await created(
    service,
    '/api/v1/referrals',
    aReferralBody(patientId, service.siteId, received),
  );
  pastClassId = await givenSession(service, { heldOn: '2026-03-25' });
  const register = { attendances: [{ referralId, outcome: 'attended' }] };
  const put = await service.as('admin').put(`/api/v1/sessions/${pastClassId}/attendances`, register);
  expect(put.status, put.text).toBe(200);
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await filled.service.close();
});

interface State {
  readonly name: string;
  readonly role: TestRole;
  readonly path: string | (() => string);
  /** Brings the page into its state. */
  readonly act: (page: Page) => Promise<unknown>;
  /** What then stands there. */
  readonly shows: string;
}

const find = (typed: string) => async (page: Page) => {
  await page.locator('#field-q').fill(typed);
  await page.getByRole('main').getByRole('button', { name: 'Find' }).click();
};
const nothing = () => Promise.resolve();

const STATES: readonly State[] = [
  {
    name: 'a work list narrowed to nobody',
    role: 'lead',
    path: '/work-list?diagnosis=lung-cancer',
    act: nothing,
    shows: 'Every referral has been triaged.',
  },
  {
    name: 'a search that finds nobody',
    role: 'admin',
    path: '/search',
    act: find('Nobody'),
    shows: 'Nobody of your team fits',
  },
  {
    name: 'a search that finds a long name from right to left',
    role: 'admin',
    path: '/search',
    act: find(LONG_NAME.familyName.slice(0, 8)),
    shows: LONG_NAME.familyName,
  },
  {
    name: 'a search for nothing',
    role: 'admin',
    path: '/search',
    act: find(' '),
    shows: 'Please mend this',
  },
  {
    name: 'a week without a class',
    role: 'admin',
    path: '/classes?week=2025-01-01',
    act: nothing,
    shows: 'No class of this week',
  },
  {
    name: 'a register that is changed without a reason',
    role: 'admin',
    path: () => `/classes/${pastClassId}`,
    act: (page) => page.getByRole('button', { name: /^Did not attend/ }).click(),
    shows: 'please mend this and tap again',
  },
  {
    name: 'settings with faults',
    role: 'lead',
    path: '/team/settings',
    act: async (page) => {
      await page.getByLabel('Supervised sessions planned').fill('many');
      await page.getByRole('button', { name: 'Store as a new version' }).click();
    },
    shows: 'Give a whole number.',
  },
  {
    name: 'an invitation with faults',
    role: 'lead',
    path: '/team/accounts/new',
    act: (page) => page.locator('main form[method=post] button').last().click(),
    shows: 'Please mend this',
  },
  {
    name: 'an audit trail with nothing in it',
    role: 'lead',
    path: '/team/audit-trail?from-day=1&from-month=1&from-year=2020&to-day=2&to-month=1&to-year=2020',
    act: nothing,
    shows: 'Nothing of this kind',
  },
];

it.each(STATES)('$name is in order for everybody', async ({ role, path, act, shows }) => {
  const { page, context } = await openSignedIn(browser, filled.service, origin, role, {
    viewport: { width: 390, height: 800 },
  });
  await page.goto(typeof path === 'string' ? path : path());
  await act(page);
  await page.getByText(shows, { exact: false }).first().waitFor();
  expect(await faultsOfAccess(page)).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await faultsOfAccess(page, ['color-contrast'])).toEqual([]);
  await page.setViewportSize(ZOOMED);
  expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(
    ZOOMED.width,
  );

  await context.close();
});
