import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { refer, toldOfReleases } from '../support/release-service.js';
import { openSignedIn } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
let origin: string;
let browser: Browser;
beforeAll(async () => {
  service = await startApp();
  // 22 in all are printed as 20, 13 as 15 and 8 as 10: of the one from a ward the attack finds the number.
  await refer(service, [
    { count: 13, receivedOn: '2026-07-10', changes: { source: 'general-practice' } },
    { count: 8, receivedOn: '2026-08-12', changes: { source: 'respiratory-clinic' } },
    { count: 1, receivedOn: '2026-09-02', changes: { source: 'hospital-ward' } },
  ]);
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

describe('a release from the draft to the commissioner', () => {
  it('is refused, merged, released, and read by the commissioner and nobody else; the trail tells of it', async () => {
    const lead = await openSignedIn(browser, service, origin, 'lead', { javaScriptEnabled: false });
    await lead.page.goto('/releases');
    await expectText(lead.page, 'Nothing has been released yet.');
    await lead.page.getByRole('link', { name: 'Draft a release' }).click();
    expect(await lead.page.getByLabel('Period').inputValue()).toBe('2026-27-Q2');
    await lead.page.getByRole('button', { name: 'Show the draft' }).click();
    await expectText(lead.page, 'This draft would give people away');
    await expectText(lead.page, 'hospital ward or early supported discharge, hidden in this release');
    await expectText(lead.page, 'exactly 1');
    await expectText(lead.page, 'Merge categories of “Where referrals came from”');
    expect(await lead.page.getByRole('button', { name: 'Release this summary' }).count()).toBe(0);
    await lead.page.getByRole('button', { name: 'Merge as proposed' }).click();
    await expectText(lead.page, 'No hidden count can be worked out closely');
    await expectText(lead.page, 'Merged or left out: How soon people started; Where referrals came from');
    await lead.page.getByRole('button', { name: 'Release this summary' }).click();
    await lead.page.waitForURL('**/releases/1');
    await expectText(lead.page, 'Pulmonary rehabilitation, July to September 2026');
    expect(lead.complaints).toEqual([]);

    const reader = await openSignedIn(browser, service, origin, 'commissioner');
    await reader.page.goto('/releases');
    await expectText(reader.page, '2026-27-Q2 (July to September 2026)');
    await reader.page.getByRole('link', { name: 'Release 1' }).click();
    await expectText(reader.page, 'In this quarter the service received about 20 referrals');
    await expectText(reader.page, 'What is hidden, and why');
    await expectText(reader.page, 'Data cut 25 November 2026');
    expect(await reader.page.getByText('Withdraw').count()).toBe(0);
    for (const path of ['/releases/draft', '/work-list', '/search', '/team', '/team/audit-trail']) {
      expect((await reader.page.goto(path))?.status(), path).toBe(403);
    }
    expect((await reader.page.goto('/releases/2'))?.status()).toBe(404);
    expect(reader.complaints).toEqual([]);

    const told = toldOfReleases(service);
    expect(told).toContain('lead release-made 1');
    expect(told).toContain('commissioner release-read 1');
    await lead.page.goto('/team/audit-trail');
    await expectText(lead.page, 'Test commissioner, commissionerRelease read');
  });

  it.each([
    { width: 1280, height: 900 },
    { width: 375, height: 700 },
  ])(
    'is in order for assistive technology on every page of it, $width px wide',
    async (viewport) => {
      const lead = await openSignedIn(browser, service, origin, 'lead', { viewport });
      for (const path of ['/releases', '/releases/draft', '/releases/1']) {
        await lead.page.goto(path);
        expect(await faultsOfAccess(lead.page), path).toEqual([]);
        await picture(lead.page, `${path.replaceAll('/', '-')}-${viewport.width}`);
      }
      await lead.page.goto('/releases/draft');
      await lead.page.getByLabel('Period').fill('2026-27-Q1');
      await lead.page.getByRole('button', { name: 'Show the draft' }).click();
      expect(await faultsOfAccess(lead.page)).toEqual([]);
      await picture(lead.page, `-draft-shown-${viewport.width}`);
      expect(lead.complaints).toEqual([]);
      await lead.context.close();
    },
    60_000,
  );
});

/** Keeps a picture where a folder for them is named, to be looked at. */
async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['TIDEMARK_PICTURES'];
  if (folder !== undefined) await page.screenshot({ path: `${folder}/release${name}.png`, fullPage: true });
}

async function expectText(page: Page, text: string): Promise<void> {
  expect(await page.locator('main').textContent()).toContain(text);
}
