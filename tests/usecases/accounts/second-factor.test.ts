import { TOTP } from 'otpauth';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { epochMs } from '../../../src/domain/calendar/instant.js';
import {
  beginSecondFactor,
  changePassphrase,
  confirmSecondFactor,
  removeSecondFactor,
} from '../../../src/usecases/accounts/own-credentials.js';
import { resetSecondFactor } from '../../../src/usecases/accounts/help-account.js';
import { passSecondFactor, signIn } from '../../../src/usecases/accounts/sign-in.js';
import { whoseSession } from '../../../src/usecases/accounts/session.js';
import type { TeamMember } from '../../../src/usecases/context.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';
import { changeSettings, readSettings } from '../../../src/usecases/settings/change-settings.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { ADDRESS, givenPerson, PASSPHRASE, sessionOf, signedIn, valueOf } from '../../support/people.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const NAME = 'h.turnstone';
const WRONG_CODE = { kind: 'refused', refusal: { code: 'rules-broken', faults: [{ pointer: '/code' }] } };

let service: TestApp;
let clock: MovingClock;
let lead: TeamMember;
beforeEach(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
  const { teamId } = service;
  const accountId = await givenPerson(service.record.context, { role: 'lead', teamId }, NAME);
  lead = { accountId, role: 'lead', teamId };
});
afterEach(() => service.close());

const context = () => service.record.context;
const codeOf = (secret: string, stepsAhead = 0): string =>
  TOTP.generate({ secret: secretOf(secret), timestamp: epochMs(clock.now()) + stepsAhead * 30_000 });
const secretOf = (base32: string) => new TOTP({ secret: base32 }).secret;
/** Sets up a second factor in a session; gives the secret, and leaves the codes of that minute behind. */
const enrol = async (): Promise<string> => {
  const own = await sessionOf(context(), NAME);
  const { secret } = valueOf(await beginSecondFactor(context(), own));
  valueOf(await confirmSecondFactor(context(), own, codeOf(secret)));
  clock.moveBy(90);
  return secret;
};
const kindOf = async (sessionSecret: string) => (await whoseSession(context(), sessionSecret))?.kind ?? null;

describe('a second factor', () => {
  it('is asked for only after a code of it was shown', async () => {
    const own = await sessionOf(context(), NAME);
    const { secret, uri } = valueOf(await beginSecondFactor(context(), own));
    expect(uri).toContain(secret);
    expect(await signedIn(context(), NAME)).toMatchObject({ next: 'ready' });
    expect(await confirmSecondFactor(context(), own, '000000')).toMatchObject(WRONG_CODE);
    valueOf(await confirmSecondFactor(context(), own, codeOf(secret)));
    expect(await signedIn(context(), NAME)).toMatchObject({ next: 'second-factor' });
  });

  it('leaves the session open in which it was set up, and is asked for in every other', async () => {
    const other = await signedIn(context(), NAME);
    const own = await sessionOf(context(), NAME);
    const { secret } = valueOf(await beginSecondFactor(context(), own));
    valueOf(await confirmSecondFactor(context(), own, codeOf(secret)));
    expect(await kindOf(own.secret)).toBe('ready');
    expect(await kindOf(other.sessionSecret)).toBe('second-factor-needed');
  });

  it('opens the session by its code', async () => {
    const secret = await enrol();
    const { sessionSecret } = await signedIn(context(), NAME);
    expect(await kindOf(sessionSecret)).toBe('second-factor-needed');
    expect(await passSecondFactor(context(), { sessionSecret, code: '000000' })).toMatchObject(WRONG_CODE);
    expect(await kindOf(sessionSecret)).toBe('second-factor-needed');
    valueOf(await passSecondFactor(context(), { sessionSecret, code: codeOf(secret) }));
    expect(await kindOf(sessionSecret)).toBe('ready');
  });

  it('takes no code twice, nor one before the last', async () => {
    const secret = await enrol();
    const code = codeOf(secret);
    const earlier = codeOf(secret, -1);
    const one = await signedIn(context(), NAME);
    valueOf(await passSecondFactor(context(), { sessionSecret: one.sessionSecret, code }));
    const { sessionSecret } = await signedIn(context(), NAME);
    for (const used of [code, earlier]) {
      expect(await passSecondFactor(context(), { sessionSecret, code: used })).toMatchObject(WRONG_CODE);
    }
    valueOf(await passSecondFactor(context(), { sessionSecret, code: codeOf(secret, 1) }));
  });

  it('takes no code of the step by which it was set up', async () => {
    const own = await sessionOf(context(), NAME);
    const { secret } = valueOf(await beginSecondFactor(context(), own));
    const code = codeOf(secret);
    valueOf(await confirmSecondFactor(context(), own, code));
    const { sessionSecret } = await signedIn(context(), NAME);
    expect(await passSecondFactor(context(), { sessionSecret, code })).toMatchObject(WRONG_CODE);
  });

  it('lets one of two through who show the same code at the same time', async () => {
    const secret = await enrol();
    const sessions = [await signedIn(context(), NAME), await signedIn(context(), NAME)];
    const code = codeOf(secret);
    const outcomes = await Promise.all(
      sessions.map(({ sessionSecret }) => passSecondFactor(context(), { sessionSecret, code })),
    );
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['done', 'refused']);
  });

  it('delays the next after several wrong codes, in whatever session', async () => {
    const secret = await enrol();
    for (let index = 0; index < 5; index += 1) {
      const { sessionSecret } = await signedIn(context(), NAME);
      expect(await passSecondFactor(context(), { sessionSecret, code: '000000' })).toMatchObject(WRONG_CODE);
    }
    const { sessionSecret } = await signedIn(context(), NAME);
    const right = { sessionSecret, code: codeOf(secret) };
    expect(await passSecondFactor(context(), right)).toMatchObject({
      refusal: { code: 'sign-in-delayed', retryAfterSeconds: 5 },
    });
    clock.moveBy(5);
    valueOf(await passSecondFactor(context(), { sessionSecret, code: codeOf(secret) }));
  });

  it('must be shown within ten minutes of the passphrase', async () => {
    const secret = await enrol();
    const { sessionSecret } = await signedIn(context(), NAME);
    clock.moveBy(600);
    expect(await passSecondFactor(context(), { sessionSecret, code: codeOf(secret) })).toMatchObject({
      refusal: { code: 'session-over' },
    });
    expect(await kindOf(sessionSecret)).toBeNull();
  });

  it('is not replaced by another: it is removed first, with the passphrase', async () => {
    await enrol();
    const own = { actor: lead, sessionId: 'none' };
    const present = { refusal: { code: 'second-factor-present' } };
    expect(await beginSecondFactor(context(), own)).toMatchObject(present);
    expect(await confirmSecondFactor(context(), own, '000000')).toMatchObject(present);
    expect(await removeSecondFactor(context(), own, 'something else entirely')).toMatchObject({
      refusal: { faults: [{ pointer: '/currentPassphrase', code: 'wrong-passphrase' }] },
    });
    valueOf(await removeSecondFactor(context(), own, PASSPHRASE));
    expect(await signedIn(context(), NAME)).toMatchObject({ next: 'ready' });
  });

  it('is taken away by a lead from somebody who lost it, whose sessions end, and from nobody of another team', async () => {
    await enrol();
    const { sessionSecret } = await signedIn(context(), NAME);
    const { teamId } = service;
    const accountId = await givenPerson(context(), { role: 'lead', teamId }, 'other.lead');
    const stranger: TeamMember = { accountId, role: 'lead', teamId: service.otherTeam.teamId };
    const absent = { refusal: { code: 'not-found', what: 'account' } };
    const ofLead = { accountId: lead.accountId, reason: 'The telephone was lost' };
    expect(await resetSecondFactor(context(), stranger, ofLead)).toMatchObject(absent);
    const own = { refusal: { code: 'own-account' } };
    expect(await resetSecondFactor(context(), lead, ofLead)).toMatchObject(own);
    const colleague: TeamMember = { accountId, role: 'lead', teamId };
    expect(valueOf(await resetSecondFactor(context(), colleague, ofLead))).toMatchObject({
      hasSecondFactor: false,
    });
    expect(await kindOf(sessionSecret)).toBeNull();
  });

  it('is nowhere in the trail, neither secret nor code', async () => {
    const secret = await enrol();
    const { sessionSecret } = await signedIn(context(), NAME);
    const code = codeOf(secret);
    await passSecondFactor(context(), { sessionSecret, code });
    const trail = JSON.stringify(
      await service.record.connection.db.selectFrom('audit_event').select(['action', 'details']).execute(),
    );
    for (const action of ['second-factor-begun', 'second-factor-set-up', 'second-factor-passed']) {
      expect(trail).toContain(action);
    }
    for (const hidden of [secret, `"${code}"`]) expect(trail).not.toContain(hidden);
  });
});

describe('a team that requires a second factor of its leads', () => {
  const require = async (rule: 'optional' | 'required') =>
    changeSettings(context(), lead, {
      settings: { ...DEFAULT_TEAM_SETTINGS, leadSecondFactor: rule },
      reason: 'Agreed by the team',
      basedOn: [(await readSettings(context(), lead)).version],
    });

  it('lets them do nothing but set it up, from the next request on', async () => {
    const own = await sessionOf(context(), NAME);
    expect(own.kind).toBe('ready');
    await require('required');
    expect(await kindOf(own.secret)).toBe('enrolment-needed');
    expect(await signedIn(context(), NAME)).toMatchObject({ next: 'enrol-second-factor' });
    const { secret } = valueOf(await beginSecondFactor(context(), own));
    valueOf(await confirmSecondFactor(context(), own, codeOf(secret)));
    expect(await kindOf(own.secret)).toBe('ready');
  });

  it('asks nobody else for it', async () => {
    await require('required');
    const { teamId, commissionerId } = service;
    await givenPerson(context(), { role: 'clinician', teamId }, 's.whimbrel');
    await givenPerson(context(), { role: 'commissioner', commissionerId }, 'b.sanderling');
    for (const name of ['s.whimbrel', 'b.sanderling']) {
      expect(await signedIn(context(), name)).toMatchObject({ next: 'ready' });
    }
  });
});

describe('changing the passphrase', () => {
  const NEXT = 'oystercatchers count the tide';

  it('ends every other session and keeps the own; the former passphrase opens nothing', async () => {
    const own = await sessionOf(context(), NAME);
    const other = await signedIn(context(), NAME);
    const change = { currentPassphrase: PASSPHRASE, passphrase: NEXT };
    valueOf(await changePassphrase(context(), own, change));
    expect([await kindOf(own.secret), await kindOf(other.sessionSecret)]).toEqual(['ready', null]);
    const by = (passphrase: string) => signIn(context(), { signInName: NAME, passphrase, address: ADDRESS });
    expect(await by(PASSPHRASE)).toMatchObject({ kind: 'refused' });
    expect(await by(NEXT)).toMatchObject({ kind: 'done' });
  });

  it.each([
    ['a wrong present one', 'not the present one', NEXT, '/currentPassphrase'],
    ['one that is too short', PASSPHRASE, 'short', '/passphrase'],
    ['a common one', PASSPHRASE, 'password123456', '/passphrase'],
    ['one with the sign-in name in it', PASSPHRASE, 'h.turnstone by the sea', '/passphrase'],
  ])('is refused with %s', async (_name, currentPassphrase, passphrase, pointer) => {
    const own = await sessionOf(context(), NAME);
    expect(await changePassphrase(context(), own, { currentPassphrase, passphrase })).toMatchObject({
      refusal: { code: 'rules-broken', faults: [{ pointer }] },
    });
    await signedIn(context(), NAME);
  });

  it('is delayed after several wrong ones: a session left open is no way to guess', async () => {
    const own = await sessionOf(context(), NAME);
    const guess = () =>
      changePassphrase(context(), own, { currentPassphrase: 'a guess of mine', passphrase: NEXT });
    for (let index = 0; index < 5; index += 1) await guess();
    expect(await guess()).toMatchObject({ refusal: { code: 'sign-in-delayed' } });
  });
});
