import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { UNSENT_KEPT_S, unsentForms, SECRET_FIELDS } from '../../../src/web/unsent/unsent-forms.js';
import { SESSION_COOKIE } from '../../../src/web/session-cookie.js';
import { anAssessment } from '../../support/entries.js';
import { fieldsOfForm, formsOf } from '../../support/form-fields.js';
import { readSource, sourceFiles } from '../../support/import-rules.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { givenAssessment, givenReferral, givenTriagedReferral } from '../../support/scenario.js';
import { sessionSecretFor, strangeSecret } from '../../support/signed-in.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp, TestRole } from '../../support/start-app.js';

const MINUTE_S = 60;

let app: TestApp;
let clock: MovingClock;
let pages: PageClient;
beforeAll(async () => {
  clock = movingClock('2026-11-25');
  app = await startApp(clock);
});
beforeEach(async () => {
  clock.moveTo('2026-11-25');
  pages = await pagesAs(app, 'clinician');
});
afterAll(() => app.close());

/** The form of a page that holds a field, with what stands in it. */
async function formOf(path: string, field: string, who = pages) {
  const forms = formsOf((await who.get(path)).text).map(fieldsOfForm);
  return forms.find((each) => field in each) ?? {};
}
const signInAgain = async (role: TestRole = 'clinician') =>
  pages.cookies.set(SESSION_COOKIE, await sessionSecretFor(app, role));
const triagePath = async () => `/referrals/${await givenReferral(app)}/triage`;
const TYPED = { note: 'Prefers "mornings" & walks <slowly>' };

/** Fills the form of triage in, and sends it when the session has ended. */
async function sendTooLate(path: string, changes: Record<string, string> = TYPED) {
  const fields = await formOf(path, '_csrf');
  clock.moveBy(31 * MINUTE_S);
  return pages.post(path, { ...fields, ...changes });
}

describe('a form that is sent after the session has ended', () => {
  it('is in its page again for the person who signs in, stored only when it is sent once more', async () => {
    const referralId = await givenTriagedReferral(app);
    const path = `/referrals/${referralId}/assessments/baseline`;
    const fields = await formOf(path, 'heightCm');
    clock.moveBy(31 * MINUTE_S);
    const late = await pages.post(path, { ...fields, heightCm: '171', notes: 'Half a "sen' });
    expect(late.status).toBe(303);
    expect(late.headers['location']).toBe(`/sign-in?next=${encodeURIComponent(path)}&why=kept`);
    expect((await pages.get(late.headers['location'] ?? '')).text).toContain('it is not lost');
    await signInAgain();
    const page = await pages.get(path);
    expect(page.text).toContain('What you typed is in the form again, and is not stored');
    expect(page.headers['content-length']).toBe(String(Buffer.byteLength(page.text)));
    const again = await formOf(path, 'heightCm');
    expect(again).toMatchObject({ heightCm: '171', notes: 'Half a "sen' });
    const checked = await pages.post(`${path}/check`, again);
    expect(checked.text).toContain('The draft is saved');
    expect((await pages.get(path)).text).not.toContain('What you typed is in the form again');
  });

  it('stays based on the version that it was typed from: what was changed meanwhile is told, not overwritten', async () => {
    const id = await givenAssessment(app, await givenTriagedReferral(app));
    const path = `/assessments/${id}/correction`;
    const typed = { ...(await formOf(path, 'version')), notes: 'Read again', reason: 'Read again' };
    clock.moveBy(31 * MINUTE_S);
    await pages.post(path, typed);
    const corrected = { ...anAssessment(app.siteId), weightKg: 81, reason: 'Weighed again' };
    expect((await app.as('lead').put(`/api/v1/assessments/${id}`, corrected, '"1"')).status).toBe(200);
    await signInAgain();
    const again = await formOf(path, 'version');
    expect(again).toMatchObject({ version: '1', notes: 'Read again' });
    const late = await pages.post(path, again);
    expect(late.status).toBe(412);
    expect(late.text).toContain('Weighed again');
  });

  it('is nobody else’s: another account on the same machine sees nothing of it', async () => {
    const path = await triagePath();
    await sendTooLate(path);
    await signInAgain('lead');
    const { text } = await pages.get(path);
    expect(text).not.toContain('Prefers');
    expect(text).not.toContain('in the form again');
    await signInAgain('clinician');
    expect(JSON.stringify(formsOf((await pages.get(path)).text).map(fieldsOfForm))).toContain('Prefers');
  });

  it('is forgotten after an hour, and when it is thrown away', async () => {
    const path = await triagePath();
    await sendTooLate(path);
    await signInAgain();
    const thrown = await pages.submit(path, {}, '/unsent-form/discard');
    expect([thrown.status, thrown.headers['location']]).toEqual([303, path]);
    expect((await pages.get(path)).text).not.toContain('Prefers');
    await sendTooLate(path);
    clock.moveBy(UNSENT_KEPT_S);
    await signInAgain();
    expect((await pages.get(path)).text).not.toContain('Prefers');
  });

  it('can be sent again as it was where its page has no place for all of it', async () => {
    const path = await triagePath();
    await sendTooLate(path, { ...TYPED, strange: 'of a page that was made of what was typed' });
    await signInAgain();
    const { text } = await pages.get(path);
    expect(text).toContain('This page has no place for all of it');
    const [again = ''] = formsOf(text);
    expect(fieldsOfForm(again)).toMatchObject({ ...TYPED, strange: expect.any(String) as string });
    expect(again).toContain(`action="${path}"`);
  });

  it('is not kept with a secret in it, and the sign-in page says so', async () => {
    clock.moveBy(31 * MINUTE_S);
    const changes = { currentPassphrase: 'a b c', passphrase: 'd e f', again: 'd e f' };
    const late = await pages.submit('/sign-in', changes, '/account/passphrase');
    expect(late.headers['location']).toContain('why=unsent');
    expect((await pages.get(late.headers['location'] ?? '')).text).toContain('never kept');
    await signInAgain();
    expect((await pages.get('/account/passphrase')).text).not.toContain('in the form again');
  });

  it('is not kept of somebody who never had a session, or without the token of a page', async () => {
    const path = await triagePath();
    const fields = await formOf(path, '_csrf');
    pages.cookies.set(SESSION_COOKIE, strangeSecret());
    expect((await pages.post(path, { ...fields, ...TYPED })).headers['location']).toContain('why=unsent');
    await signInAgain();
    clock.moveBy(31 * MINUTE_S);
    expect((await pages.post(path, { ...fields, ...TYPED, _csrf: 'forged' })).status).toBe(403);
    await signInAgain();
    expect((await pages.get(path)).text).not.toContain('Prefers');
  });
});

describe('the keeping of forms', () => {
  const fields = new Map([['note', ['x']]]);
  const form = (action: string) => ({ action, page: action, fields });

  it('holds the latest few of a person, one for an address', () => {
    const kept = unsentForms(clock);
    for (let number = 1; number <= 7; number += 1) kept.keep('one', form(`/dunes/${number}`));
    kept.keep('one', form('/dunes/5'));
    kept.keep('two', form('/dunes/5'));
    expect(kept.of('one').map(({ action }) => action)).toEqual([
      '/dunes/5',
      '/dunes/7',
      '/dunes/6',
      '/dunes/4',
      '/dunes/3',
    ]);
    expect(kept.of('two')).toHaveLength(1);
    kept.forget('one', '/dunes/5/check');
    expect(kept.of('one')).toHaveLength(4);
  });

  it('knows every field of the pages in which a passphrase or a code is typed', () => {
    const sources = sourceFiles('src')
      .filter((file) => file.endsWith('.tsx'))
      .map(readSource);
    const elements = sources.flatMap((text) =>
      [
        ...text.matchAll(/<(?:TextField|TextInput|input)\b[^>]*?(?:type="password"|one-time-code)[^>]*>/g),
      ].map(([element]) => element),
    );
    const names = elements.map((element) => /name="([^"]*)"/.exec(element)?.[1] ?? element);
    expect(names.length).toBeGreaterThan(4);
    expect(names.filter((name) => !SECRET_FIELDS.includes(name))).toEqual([]);
  });
});
