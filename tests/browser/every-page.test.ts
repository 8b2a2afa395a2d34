import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { bytesOfView, openBrowser, openPage, serve } from '../support/browser.js';
import type { WatchedPage } from '../support/browser.js';
import { addressOf, EVERY_PAGE, nameOf, startFilled } from '../support/every-page.js';
import type { FilledService, PageEntry } from '../support/every-page.js';
import { openSignedIn } from '../support/signed-in.js';

const SCREEN = { width: 1280, height: 720 } as const;
/** A page at 400 % zoom of a screen 1280 px wide (WCAG 2.2, 1.4.10). */
const ZOOMED = { width: 320, height: 256 } as const;
const MOST_BYTES = 150_000;
/** Set to a folder, such as `var/pictures`, to have each page drawn at three widths, light and dark. */
const PICTURES = process.env['TIDEMARK_PICTURES'];
const WIDTHS = [390, 820, 1440] as const;

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

const kept = new Map<PageEntry['role'], WatchedPage>();

/** A page of a role, kept for all that it opens; nothing that it was sent is kept, as if it came for the first time. */
async function pageFor(role: PageEntry['role']): Promise<WatchedPage> {
  const watched = kept.get(role) ?? (await openWithoutCache(role));
  kept.set(role, watched);
  await watched.page.setViewportSize(SCREEN);
  await watched.page.emulateMedia({ colorScheme: null, forcedColors: null });
  return watched;
}

async function openWithoutCache(role: PageEntry['role']): Promise<WatchedPage> {
  const watched = await (role === null
    ? openPage(browser, origin)
    : openSignedIn(browser, filled.service, origin, role));
  const session = await watched.context.newCDPSession(watched.page);
  await session.send('Network.enable');
  await session.send('Network.setCacheDisabled', { cacheDisabled: true });
  return watched;
}

const asked = new Map<readonly string[], number>();

/** What went wrong on a page that is kept since this was last asked. */
function sinceLastAsked(complaints: readonly string[]): readonly string[] {
  const since = complaints.slice(asked.get(complaints) ?? 0);
  asked.set(complaints, complaints.length);
  return since;
}

describe.each(EVERY_PAGE.map((entry) => [nameOf(entry), entry] as const))('%s', (name, entry) => {
  it('is in order from all sides', async () => {
    const { page, complaints } = await pageFor(entry.role);
    const bytes = bytesOfView(page);
    const response = await page.goto(addressOf(entry, filled), { waitUntil: 'load' });
    expect(response?.status()).toBe(entry.status ?? 200);
    const headers = response?.headers() ?? {};
    expect(headers['content-security-policy']).toBe(
      "default-src 'self';base-uri 'none';form-action 'self';frame-ancestors 'none';object-src 'none'",
    );
    expect(headers['cache-control']).toBe('no-store');
    // Type may come after all the rest.
    await page.evaluate('document.fonts.ready.then(() => {})');
    expect(await bytes()).toBeLessThan(MOST_BYTES);

    expect(await faultsOfAccess(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await faultsOfAccess(page, ['color-contrast'])).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light', forcedColors: 'active' });
    expect(await invisibleControls(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: null, forcedColors: null });

    expect(
      await page.evaluate<number>(
        `document.querySelectorAll('[tabindex]:not([tabindex="0"]):not([tabindex="-1"])').length`,
      ),
    ).toBe(0);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(`document.activeElement.textContent.trim()`)).toBe('Skip to the content');
    expect(await page.evaluate(MOVING)).toEqual([]);

    await page.setViewportSize(ZOOMED);
    expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(
      ZOOMED.width,
    );
    expect(sinceLastAsked(complaints)).toEqual([]);
    if (PICTURES !== undefined) await drawPictures(page, PICTURES, name);
  });
});

/** Everything that moves although less motion was asked for. */
const MOVING = `[...document.querySelectorAll('*')]
  .filter((element) => {
    const { transitionDuration, animationName } = getComputedStyle(element);
    return animationName !== 'none' || /[1-9]/.test(transitionDuration);
  })
  .map((element) => element.tagName)`;

/** Buttons and fields that cannot be told from the page when the system sets the colours: without a border. */
async function invisibleControls(page: Page): Promise<readonly string[]> {
  return page.evaluate<
    string[]
  >(`[...document.querySelectorAll('.button, main input:not([type=hidden]):not([type=checkbox]):not([type=radio]), main select, main textarea')]
    .filter((element) => getComputedStyle(element).borderTopWidth === '0px')
    .map((element) => element.outerHTML.slice(0, 80))`);
}

async function drawPictures(page: Page, folder: string, name: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  await page.evaluate('document.activeElement.blur()');
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await page.screenshot({ path: `${folder}/${name} ${width} ${colorScheme}.png`, fullPage: true });
    }
  }
}
