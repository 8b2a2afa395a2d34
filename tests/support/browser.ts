import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContext, BrowserContextOptions, Page, Request } from 'playwright-core';
import type { App } from '../../src/http/app-types.js';

const USUAL_PATHS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Nothing but the tests' own addresses is asked for, and nothing of the machine is needed. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * The Chromium that the tests run in: named by the environment, at a usual path, or playwright's own.
 *
 * @returns its path; null where there is none
 * @throws Error when the environment names a file that is not there
 */
export function findChromium(
  environment: Readonly<Record<string, string | undefined>> = process.env,
  usualPaths: readonly string[] = USUAL_PATHS,
): string | null {
  for (const name of ['TIDEMARK_CHROMIUM', 'CHROMIUM_PATH']) {
    const path = environment[name];
    if (path === undefined || path === '') continue;
    if (!existsSync(path)) throw new Error(`${name} names ${path}, which is not there.`);
    return path;
  }
  return usualPaths.find((path) => existsSync(path)) ?? playwrightsOwn();
}

function playwrightsOwn(): string | null {
  const path = chromium.executablePath();
  return path !== '' && existsSync(path) ? path : null;
}

/** What to do where there is no browser: tests that need one fail with this line, and are never skipped. */
export const NO_CHROMIUM =
  'The browser tests need Chromium: install it (on Debian: apt-get install chromium), or name its path in TIDEMARK_CHROMIUM.';

async function chromiumPath(): Promise<string> {
  const found = findChromium();
  if (found !== null) return found;
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) throw new Error(NO_CHROMIUM);
  await installOnce();
  const installed = findChromium();
  if (installed === null) throw new Error(NO_CHROMIUM);
  return installed;
}

const LOCK = join(tmpdir(), 'tidemark-tests-install-chromium');
const LOCK_WAIT_MS = 2000;
const LOCK_TRIES = 300;

/** Several test files may miss the browser at once: one installs it, the others wait. */
async function installOnce(): Promise<void> {
  for (let tries = 0; tries < LOCK_TRIES; tries += 1) {
    try {
      mkdirSync(LOCK);
    } catch {
      await wait(LOCK_WAIT_MS);
      if (findChromium() !== null) return;
      continue;
    }
    try {
      if (findChromium() === null) await install();
    } finally {
      rmSync(LOCK, { recursive: true, force: true });
    }
    return;
  }
}

async function install(): Promise<void> {
  await run('apt-get', ['update', '-qq']);
  await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium']);
}

async function run(command: string, args: readonly string[]): Promise<void> {
  const child = spawn(command, args, {
    stdio: 'ignore',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  const code = await new Promise<number | null>((resolve) => {
    child.once('exit', resolve);
    child.once('error', () => resolve(null));
  });
  if (code !== 0) throw new Error(`${NO_CHROMIUM} (${command} ${args.join(' ')} failed.)`);
}

// While a file is read in and not in a hook, as installing may take longer than a hook may.
const EXECUTABLE = await chromiumPath();

/** Starts a browser. */
export async function openBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: EXECUTABLE, args: FLAGS });
}

/** Starts a browser in a process that can be killed. @returns the browser, and what kills it */
export async function openDoomedBrowser(): Promise<{ browser: Browser; kill: () => Promise<void> }> {
  const server = await chromium.launchServer({ executablePath: EXECUTABLE, args: FLAGS });
  return { browser: await chromium.connect(server.wsEndpoint()), kill: () => server.kill() };
}

/** The service in a browser: a page, and everything that went wrong on it. */
export interface WatchedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors of the console and of scripts, and requests that left the service. Empty when all is well. */
  readonly complaints: readonly string[];
}

/** Opens a page in a browser profile of its own. */
export async function openPage(
  browser: Browser,
  origin: string,
  options: BrowserContextOptions = {},
): Promise<WatchedPage> {
  const context = await browser.newContext({
    baseURL: origin,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    reducedMotion: 'reduce',
    ...options,
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    // Chromium complains of every page with a status from 400; the tests ask for such pages on purpose.
    if (message.type() !== 'error' || /Failed to load resource.*status of 4\d\d/.test(message.text())) return;
    complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`script: ${error.message}`));
  page.on('request', (request) => {
    if (!request.url().startsWith(`${origin}/`)) complaints.push(`request: ${request.url()}`);
  });
  return { page, context, complaints };
}

/** Counts the bodies of all that a page asks the service for, as they are sent. @returns the bytes until it is asked */
export function bytesOfView(page: Page): () => Promise<number> {
  const sizes: Promise<number>[] = [];
  const add = (request: Request): void => {
    sizes.push(request.sizes().then(({ responseBodySize }) => responseBodySize));
  };
  page.on('requestfinished', add);
  return async () => {
    page.off('requestfinished', add);
    return (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
  };
}

/** Lets the service listen on a free port of this machine. @returns its origin, such as `http://127.0.0.1:41234` */
export async function serve(app: App): Promise<string> {
  await app.listen({ host: '127.0.0.1', port: 0 });
  const { port } = app.server.address() as AddressInfo;
  return `http://127.0.0.1:${port}`;
}
