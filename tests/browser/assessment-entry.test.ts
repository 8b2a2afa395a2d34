import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openRecord } from '../../src/app/open-record.js';
import { SYSTEM_CLOCK } from '../../src/app/system-clock.js';
import { SESSION_COOKIE } from '../../src/web/session-cookie.js';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, openDoomedBrowser, serve } from '../support/browser.js';
import { compiledCommand } from '../support/compiled-command.js';
import { asRecord, itemsOf } from '../support/response.js';
import { givenAssessment, givenTriagedReferral } from '../support/scenario.js';
import { startService } from '../support/service-process.js';
import type { ServiceProcess } from '../support/service-process.js';
import { openSignedIn, sessionSecretFor } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

const TABLET = { viewport: { width: 820, height: 1180 } };

let service: TestApp;
let origin: string;
let browser: Browser;
let referralId = '';
beforeAll(async () => {
  service = await startApp();
  origin = await serve(service.app);
  browser = await openBrowser();
});
beforeEach(async () => {
  referralId = await givenTriagedReferral(service);
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

const address = (timepoint = 'baseline'): string => `/referrals/${referralId}/assessments/${timepoint}`;
const open = async (role: 'clinician' | 'lead', options = {}, at = origin) => {
  const watched = await openSignedIn(browser, service, at, role, { ...TABLET, ...options });
  await watched.page.goto(address());
  return watched;
};
const field = (page: Page, name: string) => page.locator(`form.sheet [name="${name}"]`);
const stored = async () =>
  itemsOf(await service.as('clinician').get(`/api/v1/referrals/${referralId}/assessments`));
const savedState = (page: Page) => page.locator('[data-saved]');
const draftFields = async () => {
  const answer = await service.as('clinician').get(`/api/v1/referrals/${referralId}/drafts/baseline`);
  return asRecord(asRecord(answer.body)['fields']);
};
const figures = (page: Page, slot: string) => page.locator(`[data-figures="${slot}"]`);

/** With another session, as after signing in on another tab. */
const signInAgain = async (context: BrowserContext) =>
  context.addCookies([
    {
      name: SESSION_COOKIE,
      value: await sessionSecretFor(service, 'clinician'),
      url: origin.replace('http:', 'https:'),
      secure: true,
    },
  ]);

/** What comes about within a few seconds. */
const soon = <Value>(read: () => Promise<Value>) => expect.poll(read, { timeout: 20_000 });

/** Types a whole baseline in the order of the page; the first walk is counted by taps where there is a script. */
async function typeBaseline(page: Page, hasScript: boolean): Promise<void> {
  for (const [name, text] of [
    ['assessedOn-day', '20'],
    ['assessedOn-month', '4'],
    ['assessedOn-year', '2026'],
  ] as const) {
    await field(page, name).fill(text);
  }
  await page.getByLabel('Looked at: no concern').check();
  for (const [name, text] of Object.entries({
    heightCm: '160',
    weightKg: '68.5',
    spo2Percent: '95',
    heartRateBpm: '82',
    systolicMmHg: '130',
    diastolicMmHg: '78',
  })) {
    await field(page, name).fill(text);
  }
  await field(page, 'walkTest').selectOption('incremental-shuttle-walk');
  await field(page, 'courseLengthM').fill('10');
  await field(page, 'walkingAid').selectOption('none');
  await field(page, 'oxygenLPerMin').fill('0');
  if (hasScript) {
    const tap = page.locator('[data-taps=walk1]').getByRole('button', { name: 'One shuttle' });
    // 3 + 4 shuttles of levels 1 and 2, and one of level 3.
    for (let count = 0; count < 9; count += 1) await tap.click();
    await page.locator('[data-taps=walk1]').getByRole('button', { name: 'Take one back' }).click();
    expect([
      await field(page, 'walk1.level').inputValue(),
      await field(page, 'walk1.shuttles').inputValue(),
    ]).toEqual(['3', '1']);
  } else {
    await field(page, 'walk1.level').fill('3');
    await field(page, 'walk1.shuttles').fill('1');
  }
  await field(page, 'walk2.distanceM').fill('100');
  await field(page, 'sitToStandTest').selectOption('one-minute-sit-to-stand');
  await field(page, 'sitToStand.repetitions').fill('18');
  await page.locator('details.questionnaire summary', { hasText: 'COPD Assessment Test' }).first().click();
  for (const [index, score] of [3, 3, 2, 4, 3, 2, 3, 2].entries()) {
    await field(page, `q.copd-assessment-test.${index + 1}`).fill(String(score));
  }
}

async function expectBaseline(page: Page): Promise<void> {
  await page.waitForURL('**/recorded/*');
  expect(await page.locator('main').textContent()).toContain('The assessment is recorded');
  expect(await stored()).toMatchObject([
    {
      scores: [{ measure: 'cat-total', value: 22 }],
      entry: {
        assessedOn: '2026-04-20',
        heightCm: 160,
        resting: { spo2Percent: 95, heartRateBpm: 82, systolicMmHg: 130, diastolicMmHg: 78 },
        walkTests: [{ distanceM: 80 }, { distanceM: 100 }],
        sitToStands: [{ repetitions: 18 }],
      },
    },
  ]);
}

describe('a whole baseline on a tablet', { timeout: 90_000 }, () => {
  it('is typed with taps, its figures keeping up, and recorded', async () => {
    const { page, complaints } = await open('clinician');
    expect(await faultsOfAccess(page)).toEqual([]);
    await typeBaseline(page, true);
    await soon(() => figures(page, 'walk').textContent()).toMatch(/ISWD 100\u00a0m; \d+\u00a0% of predicted/);
    await soon(() => figures(page, 'q.copd-assessment-test').textContent()).toBe('CAT 22');
    await soon(() => page.locator('[data-next]').textContent()).toBe('Nothing is missing.');
    await page.getByRole('button', { name: 'Record the assessment' }).dblclick();
    await expectBaseline(page);
    expect(await faultsOfAccess(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('is typed and recorded without JavaScript', async () => {
    const { page, complaints } = await open('clinician', { javaScriptEnabled: false });
    await typeBaseline(page, false);
    await page.getByRole('button', { name: 'Save and check' }).click();
    expect(await figures(page, 'walk').textContent()).toContain('ISWD 100\u00a0m');
    await page.getByRole('button', { name: 'Record the assessment' }).click();
    await expectBaseline(page);
    expect(complaints).toEqual([]);
  });

  it('has number keys for numbers, targets for a thumb, and the order of the day for the keyboard', async () => {
    const { page } = await open('clinician');
    await field(page, 'walkTest').selectOption('incremental-shuttle-walk');
    await page.evaluate(
      `for (const each of document.querySelectorAll('form.sheet details')) each.open = true`,
    );
    const small = await page.evaluate(
      `[...document.querySelectorAll('form.sheet :is(input:not([type=hidden]):not([type=radio]):not([type=checkbox]), select, textarea, .choice, summary, button:not(.visually-hidden))')].filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 44).map((each) => each.name || each.textContent)`,
    );
    expect(small).toEqual([]);
    const withoutKeypad = await page.evaluate(
      `[...document.querySelectorAll('form.sheet input:not([type=hidden]):not([type=radio]):not([type=checkbox])')].filter((each) => !['numeric', 'decimal'].includes(each.inputMode)).map((each) => each.name)`,
    );
    expect(withoutKeypad).toEqual([]);
    expect(await field(page, 'walk1.distanceM').getAttribute('inputmode')).toBe('numeric');
    expect(await field(page, 'weightKg').getAttribute('inputmode')).toBe('decimal');
    expect(await page.locator('details.step > summary h2').allTextContents()).toEqual([
      '1. Safety checklist',
      '2. Body and resting values',
      '3. First walk',
      '4. Rest',
      '5. Second walk',
      '6. Endurance walk',
      '7. Further walks',
      '8. Sit to stand',
      '9. Strength, balance and speed',
      '10. Questionnaires',
    ]);
    await page.reload();
    for (const order of [
      ['heightCm', 'weightKg', 'spo2Percent', 'heartRateBpm', 'systolicMmHg', 'diastolicMmHg'],
      ['walk1.startSpo2Percent', 'walk1.lowestSpo2Percent', 'walk1.startHeartRateBpm'],
    ]) {
      await field(page, order[0] ?? '').focus();
      for (const name of order) {
        expect(await page.evaluate('document.activeElement.name')).toBe(name);
        await page.keyboard.press('Tab');
      }
    }
    await page.reload();
    await field(page, 'siteId').focus();
    const isAt = (name: string) => page.evaluate<boolean>(`document.activeElement.name === '${name}'`);
    for (let stop = 0; stop < 40 && !(await isAt('safetyNote')); stop += 1) await page.keyboard.press('Tab');
    expect(await isAt('safetyNote')).toBe(true);
    const behindFootPx = await page.evaluate<number>(
      `document.activeElement.getBoundingClientRect().bottom - document.querySelector('.sheet-foot').getBoundingClientRect().top`,
    );
    expect(behindFootPx).toBeLessThanOrEqual(0);
  });
});

describe('the rest between two walks', () => {
  it('is counted down, and goes on from the same moment on another device', async () => {
    const { page } = await open('clinician');
    await page.getByRole('button', { name: 'Start the rest' }).click();
    const clock = page.locator('[data-rest-minutes] .clock');
    expect(await clock.textContent()).toMatch(/^(?:30:00|29:\d\d)$/);
    await soon(async () => Object.keys(await draftFields())).toContain('restStartedAt');
    const { page: other } = await open('lead');
    expect(await other.locator('[data-rest-minutes] .clock').textContent()).toMatch(/^(?:30:00|29:\d\d)$/);
    await page.getByRole('button', { name: 'Stop the clock' }).click();
    expect(await clock.textContent()).toBe('');
  });
});

describe('what is wrong or unusual', { timeout: 90_000 }, () => {
  it.each([390, 820, 1440])('is said at the field and at the top at %i px, accessibly', async (width) => {
    await givenAssessment(service, referralId);
    const { page, complaints } = await openSignedIn(browser, service, origin, 'clinician', {
      viewport: { width, height: 900 },
    });
    await page.goto(address('discharge'));
    await field(page, 'weightKg').fill('190');
    await field(page, 'walk1.distanceM').fill('285');
    await page.getByRole('button', { name: 'Save and check' }).click();
    await page.getByRole('alert').waitFor();
    expect(await page.getByLabel('190 is right').count()).toBe(1);
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await faultsOfAccess(page, ['color-contrast'])).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth <= innerWidth')).toBe(true);
    expect(complaints).toEqual([]);
  });

  it('is said while it is typed, where it is typed, and what is missing next is led to', async () => {
    const { page, context } = await open('clinician');
    await typeBaseline(page, false);
    await field(page, 'walk2.distanceM').fill('285');
    await field(page, 'q.copd-assessment-test.3').fill('9');
    await field(page, 'q.copd-assessment-test.5').fill('');
    const beside = (name: string) =>
      page.locator('.field', { has: page.locator(`[name="${name}"]`) }).locator('.live');
    await soon(() => beside('walk2.distanceM').textContent()).toContain('285');
    await soon(() => beside('q.copd-assessment-test.3').textContent()).toContain('9');
    const heard = (name: string) =>
      page.evaluate<string>(
        `(document.querySelector('form.sheet [name="${name}"]').getAttribute('aria-describedby') ?? '').split(' ').map((id) => document.getElementById(id)?.textContent ?? '').join(' ')`,
      );
    expect(await heard('walk2.distanceM')).toContain('285');
    await soon(() => page.locator('[data-next]').textContent()).toBe('Next: CAT, item 5');
    expect(await faultsOfAccess(page)).toEqual([]);
    await page.getByRole('link', { name: 'CAT, item 5' }).click();
    expect(await page.evaluate('document.activeElement.name')).toBe('q.copd-assessment-test.5');
    await field(page, 'walk2.distanceM').fill('100');
    await soon(() => beside('walk2.distanceM').count()).toBe(0);
    expect(await heard('walk2.distanceM')).not.toContain('285');
    await context.close();
  });
});

describe('a correction', { timeout: 90_000 }, () => {
  it('keeps what was typed over an ended session, a lost connection, a reload and an error, and is recorded once', async () => {
    const id = await givenAssessment(service, referralId);
    const { page, context, complaints } = await openSignedIn(browser, service, origin, 'clinician', TABLET);
    await page.goto(`/assessments/${id}/correction`);
    expect(await field(page, 'walk1.timeS').isVisible()).toBe(false);
    const record = page.getByRole('button', { name: 'Record the correction' });
    const expectTyped = async () => {
      expect(await field(page, 'walk1.distanceM').inputValue()).toBe('130');
      expect(await field(page, 'notes').inputValue()).toBe('Read again & "rightly"');
    };
    await context.clearCookies({ name: SESSION_COOKIE });
    await field(page, 'walk1.distanceM').fill('130');
    await field(page, 'notes').fill('Read again & "rightly"');
    await record.click();
    await soon(() => savedState(page).textContent()).toContain('You are signed out');
    await expectTyped();
    await signInAgain(context);
    await soon(() => savedState(page).textContent()).toContain('Draft saved');
    await context.setOffline(true);
    await field(page, 'heightCm').fill('161');
    await record.click();
    await soon(() => savedState(page).textContent()).toContain('No connection');
    await expectTyped();
    await context.setOffline(false);
    await soon(() => savedState(page).textContent()).toContain('Draft saved');
    await page.reload();
    await expectTyped();
    await record.click();
    await page.getByRole('alert').filter({ hasText: 'Nothing was stored' }).waitFor();
    await expectTyped();
    expect(await faultsOfAccess(page)).toEqual([]);
    await field(page, 'reason').fill('Read from the sheet again');
    await record.dblclick();
    await page.waitForURL('**/recorded/*');
    expect(await stored()).toMatchObject([
      {
        version: 2,
        entry: {
          heightCm: 161,
          walkTests: [{ distanceM: 130 }, { distanceM: 200 }],
          notes: 'Read again & "rightly"',
        },
      },
    ]);
    expect(complaints.filter((each) => !/Failed to load resource/.test(each))).toEqual([]);
    await context.close();
  });
});

describe('the draft', { timeout: 90_000 }, () => {
  it('is saved while somebody types, and found again after browser and server were killed', async () => {
    // The service runs in a process of its own, by the clock of the machine.
    const { connection, context } = await openRecord(service.databaseFile, SYSTEM_CLOCK);
    const ofToday = { ...service, record: { ...service.record, connection, context } };
    const start = () => startService(compiledCommand('main'), { TIDEMARK_DB: service.databaseFile });
    const openSheet = async (at: ServiceProcess, by: Browser) => {
      const { page } = await openSignedIn(by, ofToday, `http://127.0.0.1:${at.port}`, 'clinician', TABLET);
      await page.goto(address());
      return page;
    };
    const first = await start();
    const doomed = await openDoomedBrowser();
    const page = await openSheet(first, doomed.browser);
    await field(page, 'heightCm').fill('171');
    await field(page, 'notes').fill('Cold hall & "wind"');
    await soon(() => savedState(page).textContent()).toContain('Draft saved');
    await doomed.kill();
    expect(await first.end('SIGKILL')).toEqual({ code: null, signal: 'SIGKILL' });
    const second = await start();
    const later = await openSheet(second, browser);
    expect(await field(later, 'heightCm').inputValue()).toBe('171');
    expect(await field(later, 'notes').inputValue()).toBe('Cold hall & "wind"');
    await later.context().close();
    await second.end('SIGTERM');
    await connection.close();
  });

  it('is saved at once when the lid is closed, though no timer ever comes', async () => {
    const { page, context } = await open('clinician');
    await page.evaluate('globalThis.setTimeout = () => 0');
    await field(page, 'heightCm').fill('163');
    await page.evaluate(`{
      Object.defineProperty(document, 'visibilityState', { get: () => 'hidden' });
      document.dispatchEvent(new Event('visibilitychange'));
    }`);
    await soon(async () => (await draftFields())['heightCm']).toEqual(['163']);
    await context.close();
  });

  it('waits on the page while there is no connection, says so, and is saved when there is one', async () => {
    const { page, context } = await open('clinician');
    await context.setOffline(true);
    await field(page, 'heightCm').fill('171');
    await soon(() => savedState(page).textContent()).toContain('No connection');
    await page.getByRole('button', { name: 'Record the assessment' }).click();
    expect(await field(page, 'heightCm').inputValue()).toBe('171');
    await context.setOffline(false);
    await soon(async () => (await draftFields())['heightCm']).toEqual(['171']);
  });

  it('is not lost when the session has ended: signing in elsewhere is enough', async () => {
    const { page, context } = await open('clinician');
    const cookies = await context.cookies(origin.replace('http:', 'https:'));
    await context.clearCookies({ name: SESSION_COOKIE });
    await field(page, 'heightCm').fill('171');
    await soon(() => savedState(page).textContent()).toContain('You are signed out');
    expect(await faultsOfAccess(page)).toEqual([]);
    const next = await page.getByRole('link', { name: 'Sign in in another tab' }).getAttribute('href');
    expect(next).toBe(`/sign-in?next=${encodeURIComponent(address())}`);
    await context.addCookies(cookies);
    await soon(async () => (await draftFields())['heightCm']).toEqual(['171']);
  });

  it('of two people is saved by the first, and the second decides', async () => {
    const [first, second] = [await open('clinician'), await open('lead')];
    await field(first.page, 'heightCm').fill('171');
    await soon(() => savedState(first.page).textContent()).toContain('Draft saved');
    await field(second.page, 'heightCm').fill('160');
    await soon(() => savedState(second.page).textContent()).toContain('Test clinician');
    expect(await faultsOfAccess(second.page)).toEqual([]);
    expect((await draftFields())['heightCm']).toEqual(['171']);
    await second.page.getByRole('button', { name: 'Save mine in its place' }).click();
    await soon(async () => (await draftFields())['heightCm']).toEqual(['160']);
    await field(first.page, 'weightKg').fill('70');
    await soon(() => savedState(first.page).textContent()).toContain('Test lead');
    await first.page.getByRole('button', { name: 'Show what is saved' }).click();
    await soon(() => field(first.page, 'heightCm').inputValue()).toBe('160');
  });
});
