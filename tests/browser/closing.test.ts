import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faultsOfAccess } from '../support/axe.js';
import { openBrowser, serve } from '../support/browser.js';
import { aPatient, aReferralBody, aShuttleWalk } from '../support/entries.js';
import { asRecord } from '../support/response.js';
import { created, givenAssessment, givenSession } from '../support/scenario.js';
import { openSignedIn } from '../support/signed-in.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let service: TestApp;
let origin: string;
let browser: Browser;
beforeAll(async () => {
  service = await startApp();
  origin = await serve(service.app);
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

/** Somebody who walked 200 m at the start and 260 m at the end, and came to a class. */
async function givenFinished(familyName = 'Sandwort', givenName = 'Mavis'): Promise<string> {
  const withoutNumber = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' };
  const person = aPatient({ ...withoutNumber, familyName, givenName });
  const patientId = await created(service, '/api/v1/patients', person);
  const referralId = await created(service, '/api/v1/referrals', aReferralBody(patientId, service.siteId));
  const decision = { decision: 'accepted', decidedOn: '2026-04-03' };
  await created(service, `/api/v1/referrals/${referralId}/triage`, decision);
  await givenAssessment(service, referralId);
  const sessionId = await givenSession(service);
  const attendances = [{ referralId, outcome: 'attended' }];
  await service.as('lead').put(`/api/v1/sessions/${sessionId}/attendances`, { attendances });
  await givenAssessment(service, referralId, {
    timepoint: 'discharge',
    assessedOn: '2026-06-10',
    walkTests: [aShuttleWalk(230, 1), aShuttleWalk(260, 2)],
  });
  return referralId;
}

const shots = process.env['TIDEMARK_SCREENSHOTS'];

describe('a closure with both letters', () => {
  it.each([true, false])(
    'is made by a clinician with JavaScript %s, errors at their fields',
    async (javaScriptEnabled) => {
      const referralId = await givenFinished();
      const options = { javaScriptEnabled, viewport: { width: 820, height: 1180 } };
      const { page, complaints } = await openSignedIn(browser, service, origin, 'clinician', options);
      // The checker is a script, so that it cannot look at pages without.
      const expectAccess = async (shown: Shown): Promise<void> => {
        if (javaScriptEnabled) expect(await faultsOfAccess(shown)).toEqual([]);
      };
      await page.goto(`/referrals/${referralId}/closing`);
      await expectAccess(page);
      await page.getByLabel('Note').fill('Goes on to the leisure centre.');
      await page.getByRole('button', { name: 'Close the referral' }).click();
      const alert = page.getByRole('alert');
      await alert.getByRole('link', { name: 'Choose the reason.' }).click();
      expect(new URL(page.url()).hash).toBe('#field-reason');
      expect(await alert.textContent()).toContain('Say whether a written exercise plan was given.');
      expect(await page.getByLabel('Note').inputValue()).toBe('Goes on to the leisure centre.');
      await expectAccess(page);
      await shoot(page, 'closing-errors');
      await page.getByLabel('Reason').selectOption({ label: 'Programme finished' });
      await page.getByRole('radio', { name: 'Given', exact: true }).check();
      const plan = page.getByRole('group', { name: /Day on which the plan was given/ });
      await plan.getByLabel('Day', { exact: true }).fill('10');
      await plan.getByLabel('Month').fill('6');
      await plan.getByLabel('Year').fill('2026');
      await page.getByRole('button', { name: 'Close the referral' }).click();
      await page.getByRole('heading', { name: 'Closed referral' }).waitFor();
      const gp = await page
        .getByRole('article', { name: 'Pulmonary rehabilitation: summary of outcomes' })
        .textContent();
      expect(gp).toContain('+60 m');
      expect(gp).toContain('A written exercise plan was given on 10 June 2026.');
      expect(gp).toContain('Checked and signed by');
      const own = await page.getByRole('article', { name: 'What you did, and what changed' }).textContent();
      expect(own).toContain('Dear Mavis Sandwort,');
      expect(own).toContain('At the end you walked 260 metres.');
      expect(own).not.toContain('leisure centre');
      await expectAccess(page);
      await shoot(page, 'closed');
      await page.getByRole('link', { name: /^Letter to the person, alone/ }).click();
      await page.waitForURL('**/letters/patient');
      await expectAccess(page);
      await page.emulateMedia({ media: 'print' });
      expect(await page.getByText('Check it, then sign it by hand').isVisible()).toBe(false);
      expect(await page.getByText('Dear Mavis Sandwort,').isVisible()).toBe(true);
      await shoot(page, 'letter-printed');
      expect(complaints.filter((each) => !each.includes('422'))).toEqual([]);
      const closed = await service.as('lead').get(`/api/v1/referrals/${referralId}`);
      expect(asRecord(closed.body)).toMatchObject({
        stage: 'closed',
        exercisePlanGivenOn: '2026-06-10',
        closure: { closedOn: '2026-11-25', reason: 'completed', note: 'Goes on to the leisure centre.' },
      });
    },
  );

  it('stays in its width on a phone and at 400 % zoom, with a long name of another direction', async () => {
    const referralId = await givenFinished(
      'ابن-خلدون-الطويل-جدا-جدا-جدا-جدا',
      'Wolfeschlegelsteinhausenbergerdorff',
    );
    for (const width of [320, 390, 820, 1440]) {
      const options = { viewport: { width, height: 900 } };
      const { page } = await openSignedIn(browser, service, origin, 'clinician', options);
      await page.goto(`/referrals/${referralId}/closing`);
      await shoot(page, `closing-${width}`);
      expect(
        await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth'),
        `${width}`,
      ).toBe(true);
    }
    await service
      .as('lead')
      .post(`/api/v1/referrals/${referralId}/closure`, { closedOn: '2026-07-01', reason: 'completed' });
    for (const width of [320, 390, 820, 1440]) {
      const options = { viewport: { width, height: 900 } };
      const { page } = await openSignedIn(browser, service, origin, 'clinician', options);
      await page.goto(`/referrals/${referralId}/closing`);
      await shoot(page, `closed-${width}`);
      expect(
        await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth'),
        `${width}`,
      ).toBe(true);
    }
  });
});

type Shown = Awaited<ReturnType<typeof openSignedIn>>['page'];

/** Keeps a picture for whoever wants to look at it. */
async function shoot(page: Shown, name: string): Promise<void> {
  if (shots !== undefined) await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
}
