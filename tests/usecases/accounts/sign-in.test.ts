import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FREE_FAILURES } from '../../../src/domain/account/sign-in-delay.js';
import { signIn } from '../../../src/usecases/accounts/sign-in.js';
import { signOut, signOutEverywhere, whoseSession } from '../../../src/usecases/accounts/session.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { ADDRESS, givenPerson, PASSPHRASE, sessionOf, signedIn } from '../../support/people.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const NAME = 'h.turnstone';
const WRONG = 'sandpiper below the mudflat';

let service: TestApp;
let clock: MovingClock;
beforeEach(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
  await givenPerson(service.record.context, { role: 'lead', teamId: service.teamId }, NAME);
});
afterEach(() => service.close());

const attempt = (signInName: string, passphrase: string, address: string | null = ADDRESS) =>
  signIn(service.record.context, { signInName, passphrase, address });
const whose = (secret: string) => whoseSession(service.record.context, secret);
const suspend = () =>
  service.record.connection.db
    .updateTable('account')
    .set({ status: 'suspended' })
    .where('sign_in_name', '=', NAME)
    .execute();
const trail = () =>
  service.record.connection.db
    .selectFrom('audit_event')
    .select(['action', 'account_id', 'details'])
    .orderBy('sequence', 'desc')
    .execute();

const REFUSED = { kind: 'refused', refusal: { code: 'sign-in-refused' } };

describe('signing in', () => {
  it('opens a session by name and passphrase, however the name is written', async () => {
    const outcome = await attempt(' H.Turnstone ', PASSPHRASE);
    expect(outcome).toMatchObject({ kind: 'done', value: { next: 'ready' } });
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    expect(await whose(sessionSecret)).toMatchObject({
      kind: 'ready',
      actor: { role: 'lead', teamId: service.teamId },
      signInName: NAME,
    });
  });

  it('takes a passphrase as it was meant, however its letters are put together', async () => {
    // e with an acute accent: one code point, or two.
    const { openAccount } = await import('../../../src/usecases/accounts/provision.js');
    await openAccount(service.record.context, {
      displayName: 'R Avocet',
      belonging: { role: 'admin', teamId: service.teamId },
      signInName: 'r.avocet',
      passphrase: 'caf\u00e9 beside the groyne',
    });
    expect(await attempt('r.avocet', 'cafe\u0301 beside the groyne')).toMatchObject({ kind: 'done' });
  });

  it('gives one answer to a wrong passphrase, an unknown name, a suspended account and one without a passphrase', async () => {
    expect(await attempt(NAME, WRONG)).toEqual(REFUSED);
    expect(await attempt('nobody.at.all', PASSPHRASE)).toEqual(REFUSED);
    await suspend();
    expect(await attempt(NAME, PASSPHRASE)).toEqual(REFUSED);
    await service.record.connection.db
      .updateTable('account')
      .set({ passphrase_hash: null, status: 'active' })
      .where('sign_in_name', '=', NAME)
      .execute();
    expect(await attempt(NAME, PASSPHRASE)).toEqual(REFUSED);
  });

  it('stores neither passphrase, nor secret of a session, nor address, nor what was typed as a name', async () => {
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    await attempt('my-passphrase-by-mistake', WRONG);
    const tables = ['account', 'login_session', 'sign_in_delay', 'audit_event'] as const;
    for (const table of tables) {
      const rows = JSON.stringify(await service.record.connection.db.selectFrom(table).selectAll().execute());
      for (const secret of [PASSPHRASE, WRONG, sessionSecret, ADDRESS, 'by-mistake']) {
        expect(rows, table).not.toContain(secret);
      }
    }
  });

  it('is told to the audit trail: right, wrong and delayed, with the account where it is known', async () => {
    const { actor } = await sessionOf(service.record.context, NAME);
    for (let index = 0; index <= FREE_FAILURES.account + 1; index += 1) await attempt(NAME, WRONG);
    await attempt('nobody.at.all', WRONG);
    const [unknown, delayed, refused] = await trail();
    expect(unknown).toMatchObject({ action: 'sign-in-refused', account_id: null });
    expect(delayed).toMatchObject({ action: 'sign-in-delayed', account_id: actor.accountId });
    expect(refused).toMatchObject({ action: 'sign-in-refused', account_id: actor.accountId });
    const opened = (await trail()).find(({ action }) => action === 'signed-in');
    expect(opened).toMatchObject({ account_id: actor.accountId });
  });
});

describe('wrong attempts', () => {
  const delayOf = async (signInName: string, passphrase = WRONG, address: string | null = ADDRESS) => {
    const outcome = await attempt(signInName, passphrase, address);
    if (outcome.kind === 'done' || outcome.refusal.code !== 'sign-in-delayed') return null;
    return outcome.refusal.retryAfterSeconds;
  };
  const fail = async (times: number, signInName = NAME, address: string | null = ADDRESS) => {
    for (let index = 0; index < times; index += 1) await attempt(signInName, WRONG, address);
  };

  it.each([
    ['an account that is there', NAME],
    ['a name that nobody has', 'nobody.at.all'],
  ])('delay the next by %s, longer each time, and alike', async (_name, signInName) => {
    await fail(5, signInName);
    expect(await delayOf(signInName)).toBe(5);
    clock.moveBy(5);
    await fail(1, signInName);
    expect(await delayOf(signInName)).toBe(10);
    clock.moveBy(10);
    await fail(1, signInName);
    expect(await delayOf(signInName)).toBe(20);
    clock.moveBy(19.5);
    expect(await delayOf(signInName)).toBe(1);
  });

  it('refuse the right passphrase as well while they delay, and let it in afterwards', async () => {
    await fail(5);
    expect(await delayOf(NAME, PASSPHRASE)).toBe(5);
    clock.moveBy(5);
    expect(await attempt(NAME, PASSPHRASE)).toMatchObject({ kind: 'done' });
    // It starts anew.
    await fail(4);
    expect(await delayOf(NAME)).toBeNull();
  });

  it('are counted before the first is answered: many at the same time are no way round', async () => {
    const outcomes = await Promise.all(Array.from({ length: 30 }, () => attempt(NAME, WRONG)));
    const compared = outcomes.filter(
      (outcome) => outcome.kind === 'refused' && outcome.refusal.code === 'sign-in-refused',
    );
    expect(compared).toHaveLength(FREE_FAILURES.account + 1);
  });

  it('by one address delay it whatever the name, and nobody else', async () => {
    for (let index = 0; index <= FREE_FAILURES.address; index += 1) await fail(1, `guess-${index}`);
    expect(await delayOf('another.name')).toBe(5);
    expect(await delayOf(NAME, PASSPHRASE)).toBe(5);
    expect(await attempt(NAME, PASSPHRASE, '192.0.2.99')).toMatchObject({ kind: 'done' });
  });

  it('by one address are not forgotten because somebody signs in to an account of their own', async () => {
    for (let index = 0; index < FREE_FAILURES.address; index += 1) await fail(1, `guess-${index}`);
    expect(await attempt(NAME, PASSPHRASE)).toMatchObject({ kind: 'done' });
    await fail(1, 'one.more');
    expect(await delayOf('another.name')).toBe(5);
  });

  it('are forgotten after a day without one', async () => {
    await fail(5);
    clock.moveBy(24 * 3600 + 1);
    await fail(4);
    expect(await delayOf(NAME)).toBeNull();
  });
});

describe('a session', () => {
  it('ends after half an hour in which it is not used', async () => {
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    clock.moveBy(29 * 60);
    expect(await whose(sessionSecret)).not.toBeNull();
    clock.moveBy(29 * 60 + 59);
    expect(await whose(sessionSecret)).not.toBeNull();
    clock.moveBy(30 * 60);
    expect(await whose(sessionSecret)).toBeNull();
  });

  it('ends after twelve hours however much it is used', async () => {
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    for (let minutes = 0; minutes < 12 * 60 - 20; minutes += 20) {
      clock.moveBy(20 * 60);
      expect(await whose(sessionSecret)).not.toBeNull();
    }
    clock.moveBy(20 * 60);
    expect(await whose(sessionSecret)).toBeNull();
  });

  it('notes that it was used at most once a minute', async () => {
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    const lastUsed = async () => {
      const rows = await service.record.connection.db.selectFrom('login_session').selectAll().execute();
      return rows.map((row) => row.last_used_at);
    };
    clock.moveBy(59);
    await whose(sessionSecret);
    expect(await lastUsed()).toEqual(['2026-11-25T10:00:00.000Z']);
    clock.moveBy(1);
    await whose(sessionSecret);
    expect(await lastUsed()).toEqual(['2026-11-25T10:01:00.000Z']);
  });

  it('is ended by signing out, and the others are left', async () => {
    const one = await signedIn(service.record.context, NAME);
    const other = await signedIn(service.record.context, NAME);
    await signOut(service.record.context, one.sessionSecret);
    expect(await whose(one.sessionSecret)).toBeNull();
    expect(await whose(other.sessionSecret)).not.toBeNull();
    await signOut(service.record.context, one.sessionSecret);
  });

  it('is ended, like every other, by signing out everywhere', async () => {
    const one = await sessionOf(service.record.context, NAME);
    const other = await sessionOf(service.record.context, NAME);
    await signOutEverywhere(service.record.context, one.actor);
    expect([await whose(one.secret), await whose(other.secret)]).toEqual([null, null]);
  });

  it('opens nothing when the account is suspended', async () => {
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    await suspend();
    expect(await whose(sessionSecret)).toBeNull();
  });

  it.each(['', 'tds_', 'tdm_AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA'])(
    'is not opened by "%s"',
    async (secret) => {
      expect(await whose(secret)).toBeNull();
    },
  );
});
