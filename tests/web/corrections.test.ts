import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagesAs } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { asRecord, asRecords } from '../support/response.js';
import {
  givenAssessment,
  givenClosedWithOffer,
  givenReferral,
  givenSession,
  givenTriagedReferral,
} from '../support/scenario.js';
import { startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

let app: TestApp;
let admin: PageClient;
let clinician: PageClient;
beforeAll(async () => {
  app = await startApp();
  admin = await pagesAs(app, 'admin');
  clinician = await pagesAs(app, 'clinician');
});
afterAll(() => app.close());

const read = async (path: string) => asRecord((await app.as('lead').get(`/api/v1${path}`)).body);

describe('a referral that should not have been made', () => {
  it('is marked with a reason, says so with who and when, and is restored', async () => {
    const path = `/referrals/${await givenReferral(app)}`;
    expect((await admin.get(path)).text).toContain(`href="${path}/entered-in-error"`);
    const marked = await admin.submit(`${path}/entered-in-error`, { reason: 'Of another person' });
    expect([marked.status, marked.headers['location']]).toEqual([303, path]);
    expect(await read(path)).toMatchObject({
      stage: 'entered-in-error',
      enteredInError: { reason: 'Of another person' },
    });
    const page = await admin.get(path);
    expect(page.text).toContain('This referral was entered in error');
    expect(page.text).toContain('Marked by Test admin, 25 November 2026, 10:00: Of another person');
    expect(page.text).toContain(`href="${path}/restoration"`);
    expect((await admin.get(`${path}/entered-in-error`)).text).not.toContain('name="reason"');

    const restored = await clinician.submit(`${path}/restoration`, { reason: 'Right after all' });
    expect([restored.status, restored.headers['location']]).toEqual([303, path]);
    expect(await read(path)).toMatchObject({ stage: 'awaiting-triage', enteredInError: null });
    expect((await admin.get(`${path}/restoration`)).text).toContain('Nothing is to be restored');
  });

  it('is not marked without a reason, nor with one that is too long; what was typed stays', async () => {
    const path = `/referrals/${await givenReferral(app)}`;
    for (const reason of ['', '   ', 'x'.repeat(501)]) {
      const answer = await admin.submit(`${path}/entered-in-error`, { reason });
      expect(answer.status).toBe(422);
      expect(answer.text).toContain('href="#field-reason"');
      if (reason.startsWith('x')) expect(answer.text).toContain(`value="${reason}"`);
    }
    expect(await read(path)).toMatchObject({ version: 1, enteredInError: null });
  });

  it('is not marked on top of what somebody else changed meanwhile', async () => {
    const id = await givenTriagedReferral(app);
    const stale = { version: '1', reason: 'Of another person' };
    const answer = await admin.submit(`/referrals/${id}/entered-in-error`, stale);
    expect(answer.status).toBe(412);
    expect(answer.text).toContain('Somebody changed this while you were typing');
    expect(answer.text).toContain('value="Of another person"');
    expect(await read(`/referrals/${id}`)).toMatchObject({ enteredInError: null });
  });

  it('is marked once, however often the form is sent', async () => {
    const path = `/referrals/${await givenReferral(app)}/entered-in-error`;
    const { text } = await admin.get(path);
    const hidden = (name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(text)?.[1] ?? '';
    const fields = {
      _csrf: hidden('_csrf'),
      _key: hidden('_key'),
      version: '1',
      reason: 'Of another person',
    };
    const [first, again] = [await admin.post(path, fields), await admin.post(path, fields)];
    expect([first.status, again.status]).toEqual([303, 303]);
    expect(again.headers['location']).toBe(first.headers['location']);
    expect(await read(path.replace('/entered-in-error', ''))).toMatchObject({ version: 2 });
  });

  it('of another team is not there', async () => {
    for (const id of ['nobody', '01a2183c-f333-7460-94ca-962303c36fcd']) {
      expect((await admin.get(`/referrals/${id}/entered-in-error`)).status).toBe(404);
    }
  });
});

describe('an assessment that should not have been made', () => {
  it('is marked by a clinician from the referral, stays in its list, and is restored', async () => {
    const referralId = await givenTriagedReferral(app);
    const id = await givenAssessment(app, referralId);
    const path = `/assessments/${id}`;
    expect((await clinician.get(`/referrals/${referralId}`)).text).toContain(
      `href="${path}/entered-in-error"`,
    );
    const marked = await clinician.submit(`${path}/entered-in-error`, { reason: 'The twin was tested' });
    expect([marked.status, marked.headers['location']]).toEqual([
      303,
      `/referrals/${referralId}#assessments`,
    ]);
    const page = (await clinician.get(`/referrals/${referralId}`)).text;
    expect(page).toContain('Marked by Test clinician, 25 November 2026, 10:00: The twin was tested');
    expect(page).toContain(`href="${path}/restoration"`);
    expect(page).toContain('Nothing has been measured yet.');
    await clinician.submit(`${path}/restoration`, { reason: 'It was the right twin' });
    const list = await read(`/referrals/${referralId}/assessments`);
    expect(asRecords(list['items'])).toMatchObject([{ id, version: 3, enteredInError: null }]);
  });

  it('is not restored beside what stands against it: the rule is said', async () => {
    const referralId = await givenTriagedReferral(app);
    const path = `/assessments/${await givenAssessment(app, referralId)}`;
    await clinician.submit(`${path}/entered-in-error`, { reason: 'The twin was tested' });
    await givenAssessment(app, referralId, { timepoint: 'discharge', assessedOn: '2026-04-15' });
    const refused = await clinician.submit(`${path}/restoration`, { reason: 'It was the right twin' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('Assessments follow in the order baseline, discharge, follow-up');
    expect(refused.text).toContain('value="It was the right twin"');
    expect(await read(path)).toMatchObject({ enteredInError: { reason: 'The twin was tested' } });
  });

  it('is nothing that an administrator sees', async () => {
    const referralId = await givenTriagedReferral(app);
    const id = await givenAssessment(app, referralId);
    expect((await admin.get(`/assessments/${id}/entered-in-error`)).status).toBe(403);
    expect((await admin.get(`/referrals/${referralId}`)).text).not.toContain(id);
  });
});

describe('an offer and a class that should not have been made', () => {
  it('an offer is marked where the offers are, says so there, and is restored', async () => {
    const { referralId, offerId } = await givenClosedWithOffer(app);
    const offers = `/referrals/${referralId}/offers`;
    const path = `${offers}/${offerId}`;
    expect((await admin.get(offers)).text).toContain(`href="${path}/entered-in-error"`);
    const marked = await admin.submit(`${path}/entered-in-error`, { reason: 'Of another person' });
    expect([marked.status, marked.headers['location']]).toEqual([303, offers]);
    const page = (await admin.get(offers)).text;
    expect(page).toContain('entered in error');
    expect(page).toContain(`href="${path}/restoration"`);
    const [offer] = asRecords((await read(`/referrals/${referralId}`))['offers']);
    expect(offer).toMatchObject({ id: offerId, enteredInError: { reason: 'Of another person' } });
    expect((await admin.submit(`${path}/restoration`, { reason: 'It was theirs' })).status).toBe(303);
    const [restored] = asRecords((await read(`/referrals/${referralId}`))['offers']);
    expect(restored).toMatchObject({ enteredInError: null });
    expect((await admin.get(`${offers}/${referralId}/entered-in-error`)).status).toBe(404);
  });

  it('a class is marked with its register, and restored', async () => {
    const id = await givenSession(app);
    const path = `/classes/${id}`;
    expect((await admin.get(path)).text).toContain(`href="${path}/entered-in-error"`);
    const marked = await admin.submit(`${path}/entered-in-error`, { reason: 'On the wrong day' });
    expect([marked.status, marked.headers['location']]).toEqual([303, path]);
    expect((await admin.get(path)).text).toContain(`href="${path}/restoration"`);
    expect(await read(`/sessions/${id}`)).toMatchObject({ enteredInError: { reason: 'On the wrong day' } });
    expect((await admin.submit(`${path}/restoration`, { reason: 'It was that day' })).status).toBe(303);
    expect(await read(`/sessions/${id}`)).toMatchObject({ enteredInError: null });
  });
});
