import { TOTP } from 'otpauth';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { changeSettings } from '../../../src/usecases/settings/change-settings.js';
import { inviteAccount } from '../../../src/usecases/accounts/invite-account.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { givenPerson, PASSPHRASE, valueOf } from '../../support/people.js';
import { accountIdOf } from '../../support/signed-in.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const NAME = 'r.knot';

let service: TestApp;
let clock: MovingClock;
let pages: PageClient;
beforeEach(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
  pages = await pagesAs(service, null);
});
afterEach(() => service.close());

async function invited(role: 'clinician' | 'lead' = 'clinician'): Promise<string> {
  const actor = {
    accountId: await accountIdOf(service, 'lead'),
    role: 'lead',
    teamId: service.teamId,
  } as const;
  const wanted = { displayName: 'Rosa Knot', signInName: NAME, belonging: { role } };
  return valueOf(await inviteAccount(service.record.context, actor, wanted)).invitationSecret;
}

const requireSecondFactor = async () => {
  const outcome = await changeSettings(
    service.record.context,
    { accountId: await accountIdOf(service, 'lead'), role: 'lead', teamId: service.teamId },
    {
      settings: { ...DEFAULT_TEAM_SETTINGS, leadSecondFactor: 'required' },
      reason: 'Agreed at the meeting of the team',
      basedOn: [0],
    },
  );
  expect(outcome.kind).toBe('done');
};

const codeOf = (secret: string) =>
  new TOTP({ secret, algorithm: 'SHA1', digits: 6, period: 30 }).generate({
    timestamp: Date.parse(clock.now()),
  });

const keyShown = (html: string) =>
  (/class="code"><span>([A-Z2-7 ]+)</.exec(html)?.[1] ?? '').replaceAll(' ', '');

describe('an invitation', () => {
  it('lets somebody choose a passphrase and signs them in', async () => {
    const path = `/invitation/${await invited()}`;
    const page = await pages.get(path);
    expect(page.status).toBe(200);
    expect(page.text).toContain('Rosa Knot');
    expect(page.text).toContain(NAME);
    const accepted = await pages.submit(path, { passphrase: PASSPHRASE, again: PASSPHRASE });
    expect([accepted.status, accepted.headers['location']]).toEqual([303, '/']);
    expect((await pages.get('/account')).text).toContain('Rosa Knot');
    const other = await pagesAs(service, null);
    const signedIn = await other.submit('/sign-in', { signInName: NAME, passphrase: PASSPHRASE });
    expect(signedIn.status).toBe(303);
  });

  it.each([
    ['too short', 'short', 'short', 'Use 12 to 128 characters.'],
    ['common', 'password1234', 'password1234', 'among the first to be guessed'],
    [
      'typed otherwise the second time',
      PASSPHRASE,
      `${PASSPHRASE} `,
      'The two passphrases are not the same.',
    ],
  ])('takes no passphrase that is %s, and stays open', async (_what, passphrase, again, message) => {
    const path = `/invitation/${await invited()}`;
    const refused = await pages.submit(path, { passphrase, again });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain(message);
    expect((await pages.submit(path, { passphrase: PASSPHRASE, again: PASSPHRASE })).status).toBe(303);
  });

  it('can be used once, and not when it is too old or unknown', async () => {
    const path = `/invitation/${await invited()}`;
    await pages.submit(path, { passphrase: PASSPHRASE, again: PASSPHRASE });
    const again = await (await pagesAs(service, null)).get(path);
    expect(again.status).toBe(404);
    expect(again.text).toContain('This invitation cannot be used');
    expect((await pages.get('/invitation/tdi_unknown')).status).toBe(404);
  });

  it('of seven days ago is too old', async () => {
    const path = `/invitation/${await invited()}`;
    clock.moveBy(7 * 24 * 3600);
    expect((await pages.get(path)).status).toBe(404);
  });
});

describe('a second factor that the team asks of leads', () => {
  it('is set up before anything else, and asked for at the next sign-in', async () => {
    await requireSecondFactor();
    const path = `/invitation/${await invited('lead')}`;
    const accepted = await pages.submit(path, { passphrase: PASSPHRASE, again: PASSPHRASE });
    expect(accepted.headers['location']).toBe('/account/second-factor');
    const elsewhere = await pages.get('/account');
    expect([elsewhere.status, elsewhere.headers['location']]).toEqual([303, '/account/second-factor']);

    await pages.submit('/account/second-factor', {}, '/account/second-factor/begin');
    const page = await pages.get('/account/second-factor');
    const key = keyShown(page.text);
    expect(key).toMatch(/^[A-Z2-7]{32}$/);
    expect(page.text).toContain('role="img"');
    const wrong = await pages.submit('/account/second-factor', { code: '12345' });
    expect(wrong.status).toBe(422);
    expect(keyShown(wrong.text)).toBe(key);
    const right = await pages.submit('/account/second-factor', { code: codeOf(key) });
    expect(right.status).toBe(303);
    expect((await pages.get('/account')).status).toBe(200);

    const later = await pagesAs(service, null);
    clock.moveBy(60);
    const half = await later.submit('/sign-in?next=%2Faccount', { signInName: NAME, passphrase: PASSPHRASE });
    expect(half.headers['location']).toBe('/sign-in/code?next=%2Faccount');
    const early = await later.get('/account');
    expect([early.status, early.headers['location']]).toEqual([303, '/sign-in/code']);
    const refused = await later.submit('/sign-in/code?next=%2Faccount', { code: '000000' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('This code is not right');
    const passed = await later.submit('/sign-in/code?next=%2Faccount', { code: codeOf(key) });
    expect([passed.status, passed.headers['location']]).toEqual([303, '/account']);
    expect((await later.get('/account')).status).toBe(200);
  });

  it('that is not shown in ten minutes is asked for from the start', async () => {
    await givenPerson(service.record.context, { role: 'clinician', teamId: service.teamId }, NAME);
    await pages.submit('/sign-in', { signInName: NAME, passphrase: PASSPHRASE });
    await pages.submit('/account/second-factor', {}, '/account/second-factor/begin');
    const key = keyShown((await pages.get('/account/second-factor')).text);
    await pages.submit('/account/second-factor', { code: codeOf(key) });
    const later = await pagesAs(service, null);
    await later.submit('/sign-in', { signInName: NAME, passphrase: PASSPHRASE });
    clock.moveBy(600);
    const over = await later.get('/sign-in/code');
    expect([over.status, over.headers['location']]).toEqual([303, '/sign-in?why=ended']);
  });
});
