import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FREE_FAILURES } from '../../../src/domain/account/sign-in-delay.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { pagesAs, setCookiesOf } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { givenPerson, PASSPHRASE } from '../../support/people.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const NAME = 'h.turnstone';
const MINUTES = 60;

let service: TestApp;
let clock: MovingClock;
let pages: PageClient;
beforeEach(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
  await givenPerson(service.record.context, { role: 'lead', teamId: service.teamId }, NAME);
  pages = await pagesAs(service, null);
});
afterEach(() => service.close());

const signIn = (signInName: string, passphrase: string, page = '/sign-in') =>
  pages.submit(page, { signInName, passphrase });

describe('signing in', () => {
  it('gives the browser a session in a cookie that nobody else can read, and leads on', async () => {
    const response = await signIn(NAME, PASSPHRASE, '/sign-in?next=%2Faccount%3Fa%3Db');
    expect([response.status, response.headers['location']]).toEqual([303, '/account?a=b']);
    const cookie = setCookiesOf(response).find((line) => line.startsWith('__Host-tidemark='));
    expect(cookie).toMatch(/^__Host-tidemark=tds_[\w-]{43}; Path=\/; HttpOnly; Secure; SameSite=Lax$/);
    const start = await pages.get('/account');
    expect(start.status).toBe(200);
    expect(start.text).toContain('Marram Coast PR team');
  });

  it('leads to no other host', async () => {
    const response = await signIn(NAME, PASSPHRASE, '/sign-in?next=%2F%2Felsewhere.example');
    expect(response.headers['location']).toBe('/');
    const tampered = await pages.submit('/no-such-page', {});
    expect(tampered.status).not.toBe(200);
  });

  it('says the same of a wrong passphrase and of a name that nobody has, and keeps what may be kept', async () => {
    const wrong = await signIn(NAME, 'sandpiper below the mudflat');
    const unknown = await signIn('nobody.here', 'sandpiper below the mudflat');
    for (const { status, text } of [wrong, unknown]) {
      expect(status).toBe(422);
      expect(text).toContain('The sign-in name or the passphrase is not right');
      expect(text).not.toContain('mudflat');
    }
    expect(wrong.text).toContain(`value="${NAME}"`);
    const alike = (text: string, name: string) =>
      text.replaceAll(name, 'NAME').replaceAll(/name="_(?:csrf|key)" value="[^"]*"/g, '');
    expect(alike(wrong.text, NAME)).toBe(alike(unknown.text, 'nobody.here'));
    expect(setCookiesOf(wrong).filter((line) => line.startsWith('__Host-tidemark='))).toEqual([]);
  });

  it.each([NAME, 'nobody.here'])('tells a growing wait in words after wrong attempts by %s', async (name) => {
    for (let attempt = 0; attempt <= FREE_FAILURES.account; attempt += 1) {
      expect((await signIn(name, 'sandpiper below the mudflat')).status).toBe(422);
    }
    const first = await signIn(name, PASSPHRASE);
    expect([first.status, first.headers['retry-after']]).toEqual([429, '5']);
    expect(first.text).toContain('Wait 5 seconds before the next one');
    clock.moveBy(5);
    expect((await signIn(name, 'sandpiper below the mudflat')).status).toBe(422);
    expect((await signIn(name, PASSPHRASE)).text).toContain('Wait 10 seconds before the next one');
  });

  it('is not asked of somebody who is signed in', async () => {
    await signIn(NAME, PASSPHRASE);
    const again = await pages.get('/sign-in?next=%2Faccount');
    expect([again.status, again.headers['location']]).toEqual([303, '/account']);
  });

  it('is refused where the form comes from nowhere', async () => {
    const response = await pages.post('/sign-in', { signInName: NAME, passphrase: PASSPHRASE });
    expect(response.status).toBe(403);
    expect(pages.cookies.has('__Host-tidemark')).toBe(false);
  });
});

describe('a session', () => {
  beforeEach(async () => {
    await signIn(NAME, PASSPHRASE);
  });

  it('ends after half an hour without use, and leads to the sign-in page and from there back', async () => {
    clock.moveBy(29 * MINUTES);
    expect((await pages.get('/account')).status).toBe(200);
    clock.moveBy(30 * MINUTES);
    const over = await pages.get('/account?a=b');
    expect([over.status, over.headers['location']]).toEqual([
      303,
      '/sign-in?next=%2Faccount%3Fa%3Db&why=ended',
    ]);
    expect((await pages.get('/sign-in?why=ended')).text).toContain('Your session has ended');
    const back = await signIn(NAME, PASSPHRASE, '/sign-in?next=%2Faccount%3Fa%3Db&why=ended');
    expect(back.headers['location']).toBe('/account?a=b');
  });

  it('ends after twelve hours however much it is used', async () => {
    for (let use = 0; use < 12 * 3 - 1; use += 1) {
      clock.moveBy(20 * MINUTES);
      expect((await pages.get('/account')).status).toBe(200);
    }
    clock.moveBy(20 * MINUTES);
    expect((await pages.get('/account')).status).toBe(303);
  });

  it('that has ended says of a form that it was not stored', async () => {
    clock.moveBy(31 * MINUTES);
    const over = await pages.submit('/sign-in', { code: '1' }, '/account/second-factor');
    expect(over.headers['location']).toBe('/sign-in?next=%2Faccount%2Fsecond-factor&why=unsent');
    expect((await pages.get('/sign-in?why=unsent')).text).toContain('What you sent last was not stored');
  });

  it('ends by signing out, for whoever still has its secret too', async () => {
    const secret = pages.cookies.get('__Host-tidemark') ?? '';
    const out = await pages.submit('/account', {}, '/sign-out');
    expect([out.status, out.headers['location']]).toEqual([303, '/sign-in']);
    expect(pages.cookies.has('__Host-tidemark')).toBe(false);
    pages.cookies.set('__Host-tidemark', secret);
    expect((await pages.get('/account')).status).toBe(303);
  });

  it('of somebody who is suspended is over', async () => {
    await service.record.connection.db
      .updateTable('account')
      .set({ status: 'suspended' })
      .where('sign_in_name', '=', NAME)
      .execute();
    expect((await pages.get('/account')).status).toBe(303);
  });
});
