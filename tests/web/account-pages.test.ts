import { TOTP } from 'otpauth';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { movingClock } from '../support/moving-clock.js';
import type { MovingClock } from '../support/moving-clock.js';
import { pagesAs, pagesWith } from '../support/page-client.js';
import type { PageClient } from '../support/page-client.js';
import { givenPerson, PASSPHRASE, signedIn } from '../support/people.js';
import { clientOf, startApp } from '../support/start-app.js';
import type { TestApp } from '../support/start-app.js';

const NAME = 'r.knot';
const NEW = 'heron beside the culvert';

let service: TestApp;
let clock: MovingClock;
let pages: PageClient;
beforeEach(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
  await givenPerson(service.record.context, { role: 'clinician', teamId: service.teamId }, NAME);
  pages = pagesWith(service, (await signedIn(service.record.context, NAME)).sessionSecret);
});
afterEach(() => service.close());

const rows = async () => (await service.countRows())['api_token'] ?? 0;

it('the own account tells name, role, team and sign-in name', async () => {
  const { status, text } = await pages.get('/account');
  expect(status).toBe(200);
  for (const fact of ['Person r.knot', 'Clinician', 'Marram Coast PR team', NAME])
    expect(text).toContain(fact);
});

describe('the own passphrase', () => {
  const change = (currentPassphrase: string, passphrase: string, again = passphrase) =>
    pages.submit('/account/passphrase', { currentPassphrase, passphrase, again });

  it('is changed with the present one, and every other session ends', async () => {
    const elsewhere = pagesWith(service, (await signedIn(service.record.context, NAME)).sessionSecret);
    expect((await change(PASSPHRASE, NEW)).status).toBe(303);
    expect((await pages.get('/account')).status).toBe(200);
    expect((await elsewhere.get('/account')).status).toBe(303);
    const fresh = await pagesAs(service, null);
    expect((await fresh.submit('/sign-in', { signInName: NAME, passphrase: PASSPHRASE })).status).toBe(422);
    expect((await fresh.submit('/sign-in', { signInName: NAME, passphrase: NEW })).status).toBe(303);
  });

  it.each([
    ['wrong, the present one', 'heron below the culvert', NEW, NEW, 'This is not the present passphrase.'],
    ['too short', PASSPHRASE, 'short', 'short', 'Use 12 to 128 characters.'],
    ['not the same twice', PASSPHRASE, NEW, `${NEW}!`, 'The two passphrases are not the same.'],
  ])('stays as it is where it is %s', async (_what, current, passphrase, again, message) => {
    const refused = await change(current, passphrase, again);
    expect(refused.status).toBe(422);
    expect(refused.text).toContain(message);
    expect(refused.text).not.toContain(passphrase === 'short' ? 'value="short' : passphrase);
    const fresh = await pagesAs(service, null);
    expect((await fresh.submit('/sign-in', { signInName: NAME, passphrase: PASSPHRASE })).status).toBe(303);
  });
});

describe('the own second factor', () => {
  it('is set up by choice, shown at sign-in, and taken away with the passphrase', async () => {
    await pages.submit('/account/second-factor', {}, '/account/second-factor/begin');
    const { text } = await pages.get('/account/second-factor');
    const secret = (/class="code"><span>([A-Z2-7 ]+)</.exec(text)?.[1] ?? '').replaceAll(' ', '');
    const code = new TOTP({ secret }).generate({ timestamp: Date.parse(clock.now()) });
    await pages.submit('/account/second-factor', { code });
    expect((await pages.get('/account')).text).toContain('a code of your authenticator');
    const fresh = await pagesAs(service, null);
    const half = await fresh.submit('/sign-in', { signInName: NAME, passphrase: PASSPHRASE });
    expect(half.headers['location']).toBe('/sign-in/code');

    const page = '/account/second-factor/removal';
    expect((await pages.submit(page, { currentPassphrase: NEW })).status).toBe(422);
    expect((await pages.submit(page, { currentPassphrase: PASSPHRASE })).status).toBe(303);
    expect((await pages.get('/account')).text).toContain('With your passphrase alone');
  });
});

it('signing out everywhere ends this session and the others', async () => {
  const elsewhere = pagesWith(service, (await signedIn(service.record.context, NAME)).sessionSecret);
  const out = await pages.submit('/account', {}, '/account/sign-out-everywhere');
  expect([out.status, out.headers['location']]).toEqual([303, '/sign-in']);
  expect((await elsewhere.get('/account')).status).toBe(303);
});

describe('an own token', () => {
  const make = (fields: Record<string, string>) =>
    pages.submit('/account/tokens/new', { name: 'Spreadsheet', role: 'admin', days: '30', ...fields });

  it('is shown once, works in its role, and is taken back', async () => {
    const made = await make({});
    expect(made.status).toBe(200);
    const token = /(tdm_[\w-]{43})</.exec(made.text)?.[1] ?? '';
    const program = clientOf(service.app, token);
    expect((await program.get('/api/v1/patients')).status).toBe(200);
    const account = await pages.get('/account');
    expect(account.text).toContain('Spreadsheet');
    expect(account.text).not.toContain(token);
    const action = /action="(\/account\/tokens\/[^"]+\/revoke)"/.exec(account.text)?.[1] ?? '';
    expect((await pages.submit('/account', {}, action)).status).toBe(303);
    expect((await program.get('/api/v1/patients')).status).toBe(401);
    expect((await pages.get('/account')).text).toContain('taken back');
  });

  it.each([
    ['a higher role', { role: 'lead' }, 'at most your own role'],
    ['a role that there is not', { role: 'chief' }, 'Choose a role.'],
    ['no days', { days: '' }, 'Give a whole number of days from 1 to 366.'],
    ['too many days', { days: '367' }, 'Give a whole number of days from 1 to 366.'],
    ['no name', { name: ' ' }, 'This must be given.'],
    ['a name of many characters', { name: 'x'.repeat(101) }, 'Use at most 100 characters.'],
  ])('is refused with %s, and what was typed is kept', async (_what, fields, message) => {
    const before = await rows();
    const refused = await make(fields);
    expect(refused.status).toBe(422);
    expect(refused.text).toContain(message);
    if (!('name' in fields)) expect(refused.text).toContain('value="Spreadsheet"');
    expect(await rows()).toBe(before);
  });

  it('of somebody else cannot be taken back', async () => {
    const { id } = await service.record.connection.db
      .selectFrom('api_token')
      .select('id')
      .executeTakeFirstOrThrow();
    const refused = await pages.submit('/account/tokens/new', {}, `/account/tokens/${id}/revoke`);
    expect(refused.status).toBe(404);
    expect((await service.as('admin').get('/api/v1/patients')).status).toBe(200);
  });
});

describe('a form that is sent twice', () => {
  const fieldsOf = (html: string) =>
    Object.fromEntries(
      [...html.matchAll(/name="(_csrf|_key)" value="([^"]*)"/g)].map(([, name = '', value = '']) => [
        name,
        value,
      ]),
    );

  it('makes one token, one after the other or at the same time', async () => {
    const before = await rows();
    const hidden = fieldsOf((await pages.get('/account/tokens/new')).text);
    const fields = { ...hidden, name: 'Spreadsheet', role: 'admin', days: '30' };
    const sent = await Promise.all(
      Array.from({ length: 6 }, () => pages.post('/account/tokens/new', fields)),
    );
    const later = await pages.post('/account/tokens/new', fields);
    expect(sent.map(({ status }) => status).sort()).toEqual([200, 409, 409, 409, 409, 409]);
    expect(later.status).toBe(409);
    expect(later.text).toContain('carried out once');
    expect(await rows()).toBe(before + 1);
  });

  it('leads to where the first one led', async () => {
    const hidden = fieldsOf((await pages.get('/account/passphrase')).text);
    const fields = { ...hidden, currentPassphrase: PASSPHRASE, passphrase: NEW, again: NEW };
    const first = await pages.post('/account/passphrase', fields);
    const second = await pages.post('/account/passphrase', fields);
    expect([first.status, second.status]).toEqual([303, 303]);
    expect(second.headers['location']).toBe(first.headers['location']);
  });

  it('may be mended and sent again when it was refused', async () => {
    const hidden = fieldsOf((await pages.get('/account/tokens/new')).text);
    const wrong = { ...hidden, name: 'Spreadsheet', role: 'admin', days: '0' };
    expect((await pages.post('/account/tokens/new', wrong)).status).toBe(422);
    expect((await pages.post('/account/tokens/new', wrong)).status).toBe(422);
    expect((await pages.post('/account/tokens/new', { ...wrong, days: '1' })).status).toBe(200);
  });
});
