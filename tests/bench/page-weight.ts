import { SESSION_COOKIE } from '../../src/web/session-cookie.js';
import { bytesOfView, openBrowser, openPage } from '../support/browser.js';
import type { WatchedPage } from '../support/browser.js';
import { spreadOf } from './spread.js';
import type { Line } from './table.js';

/** Of a page with everything that it loads. */
const GOAL_BYTES = 150_000;

/** What is looked at, and as whom. */
export interface Visits {
  readonly origin: string;
  /** Secret of the session. */
  readonly secret: string;
  /** Each is opened in a browser that has seen nothing before. */
  readonly paths: readonly string[];
}

/** How much a first view loads, and from where. */
export async function weighPage(name: string, visits: Visits): Promise<Line> {
  const browser = await openBrowser();
  const weights: number[] = [];
  const elsewhere: string[] = [];
  for (const path of visits.paths) {
    const watched = await openPage(browser, visits.origin);
    weights.push(await firstView(watched, visits, path));
    elsewhere.push(...watched.complaints);
    await watched.context.close();
  }
  await browser.close();
  const { median, greatest } = spreadOf(weights);
  return {
    name: `${name}, first view`,
    value: `${inKilobytes(greatest)}; ${elsewhere.length} requests off the host`,
    baseline: '-',
    ratio: '-',
    goal: `< ${inKilobytes(GOAL_BYTES)}; 0 requests`,
    isMet: greatest < GOAL_BYTES && elsewhere.length === 0,
    howMeasured:
      `Chromium without a cache; bodies of the page and of all that it loads, as they are sent; ` +
      `the heaviest of ${weights.length} pages (median ${inKilobytes(median)}). Errors of the console count as requests.`,
  };
}

async function firstView({ page, context }: WatchedPage, visits: Visits, path: string): Promise<number> {
  await context.addCookies([
    {
      name: SESSION_COOKIE,
      value: visits.secret,
      url: visits.origin.replace(/^http:/, 'https:'),
      secure: true,
      httpOnly: true,
      sameSite: 'Lax',
    },
  ]);
  const bytes = bytesOfView(page);
  const response = await page.goto(path, { waitUntil: 'networkidle' });
  if (response?.status() !== 200) throw new Error(`${path} answered ${response?.status() ?? 'nothing'}.`);
  return bytes();
}

function inKilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(0)} kB`;
}
