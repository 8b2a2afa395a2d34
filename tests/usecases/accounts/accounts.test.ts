import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { acceptInvitation, readInvitation } from '../../../src/usecases/accounts/accept-invitation.js';
import { changeAccount, listAccounts } from '../../../src/usecases/accounts/change-account.js';
import { inviteAccount, renewInvitation } from '../../../src/usecases/accounts/invite-account.js';
import type { NewAccount } from '../../../src/usecases/accounts/invite-account.js';
import { createCommissioner } from '../../../src/usecases/accounts/provision.js';
import { whoseSession } from '../../../src/usecases/accounts/session.js';
import { signIn } from '../../../src/usecases/accounts/sign-in.js';
import { createToken, listTokens, revokeToken } from '../../../src/usecases/accounts/tokens.js';
import type { Actor, TeamMember } from '../../../src/usecases/context.js';
import { actorByToken } from '../../../src/usecases/sign-in.js';
import { movingClock } from '../../support/moving-clock.js';
import type { MovingClock } from '../../support/moving-clock.js';
import { ADDRESS, givenPerson, PASSPHRASE, signedIn, valueOf } from '../../support/people.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

const DAY_S = 24 * 3600;

let service: TestApp;
let clock: MovingClock;
let lead: TeamMember;
beforeEach(async () => {
  clock = movingClock('2026-11-25');
  service = await startApp(clock);
  const { teamId } = service;
  const accountId = await givenPerson(context(), { role: 'lead', teamId }, 'h.turnstone');
  lead = { accountId, role: 'lead', teamId };
});
afterEach(() => service.close());

const context = () => service.record.context;
const aClinician = (changes: Partial<NewAccount> = {}): NewAccount => ({
  displayName: 'Samphire Whimbrel',
  signInName: 's.whimbrel',
  belonging: { role: 'clinician' },
  ...changes,
});
const invite = async (changes: Partial<NewAccount> = {}) =>
  valueOf(await inviteAccount(context(), lead, aClinician(changes)));
const accept = (secret: string, passphrase = PASSPHRASE) =>
  acceptInvitation(context(), { secret, passphrase });
const NOT_VALID = { kind: 'refused', refusal: { code: 'invitation-not-valid' } };
const renew = (accountId: string, signInName: string | null = null) =>
  renewInvitation(context(), lead, { accountId, signInName });
const change = (accountId: string, version: number, changes: object, actor = lead) =>
  changeAccount(context(), actor, { accountId, basedOn: [version], changes, reason: 'Agreed' });

describe('an invitation', () => {
  it('lets somebody choose a passphrase, signs them in, and is used up', async () => {
    const { account, invitationSecret } = await invite();
    expect(account).toMatchObject({
      role: 'clinician',
      hasPassphrase: false,
      invitation: { purpose: 'join' },
    });
    expect(valueOf(await readInvitation(context(), invitationSecret))).toMatchObject({
      purpose: 'join',
      displayName: 'Samphire Whimbrel',
      signInName: 's.whimbrel',
    });
    const { sessionSecret } = valueOf(await accept(invitationSecret));
    expect(await whoseSession(context(), sessionSecret)).toMatchObject({
      kind: 'ready',
      actor: { accountId: account.id, role: 'clinician', teamId: service.teamId },
    });
    expect(await accept(invitationSecret)).toEqual(NOT_VALID);
    expect(await readInvitation(context(), invitationSecret)).toEqual(NOT_VALID);
    await signedIn(context(), 's.whimbrel');
  });

  it('is used by one of two who hold the link at the same time', async () => {
    const { invitationSecret } = await invite();
    const phrases = ['the first of two phrases', 'the second of two phrases'];
    const outcomes = await Promise.all(phrases.map((phrase) => accept(invitationSecret, phrase)));
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['done', 'refused']);
    const opened = await Promise.all(
      phrases.map((passphrase) =>
        signIn(context(), { signInName: 's.whimbrel', passphrase, address: ADDRESS }),
      ),
    );
    // The passphrase that holds is that of the one who was let in.
    expect(opened.map(({ kind }) => kind)).toEqual(outcomes.map(({ kind }) => kind));
  });

  it('is not used up by a passphrase that may not be used', async () => {
    const { invitationSecret } = await invite();
    expect(await accept(invitationSecret, 'too short')).toMatchObject({
      refusal: { faults: [{ pointer: '/passphrase' }] },
    });
    valueOf(await accept(invitationSecret));
  });

  it('ends after seven days', async () => {
    const { invitationSecret } = await invite();
    clock.moveBy(7 * DAY_S - 1);
    expect(await readInvitation(context(), invitationSecret)).toMatchObject({ kind: 'done' });
    clock.moveBy(1);
    expect(await accept(invitationSecret)).toEqual(NOT_VALID);
  });

  it('is taken back by a new one, and when the account is suspended', async () => {
    const first = await invite();
    const second = valueOf(await renew(first.account.id));
    expect(await accept(first.invitationSecret)).toEqual(NOT_VALID);
    valueOf(await change(first.account.id, 1, { status: 'suspended' }));
    expect(await accept(second.invitationSecret)).toEqual(NOT_VALID);
    expect(await renew(first.account.id)).toMatchObject({ refusal: { code: 'rules-broken' } });
    valueOf(await change(first.account.id, 2, { status: 'active' }));
    expect(await accept(second.invitationSecret)).toEqual(NOT_VALID);
  });

  it('to choose a new passphrase leaves the present one until it is used, then ends every session; a day long', async () => {
    const { account, invitationSecret } = await invite();
    const { sessionSecret } = valueOf(await accept(invitationSecret));
    const renewed = valueOf(await renew(account.id));
    expect(renewed.account.invitation).toMatchObject({
      purpose: 'reset',
      expiresAt: '2026-11-26T10:00:00.000Z',
    });
    expect(await whoseSession(context(), sessionSecret)).not.toBeNull();
    await signedIn(context(), 's.whimbrel');
    valueOf(await accept(renewed.invitationSecret, 'oystercatchers count the tide'));
    expect(await whoseSession(context(), sessionSecret)).toBeNull();
  });

  it('is no way for a lead round the own present passphrase', async () => {
    expect(await renew(lead.accountId)).toMatchObject({ refusal: { code: 'own-account' } });
  });

  it('is stored as a hash, and is nowhere in the trail', async () => {
    const { invitationSecret } = await invite();
    for (const table of ['invitation', 'audit_event', 'account'] as const) {
      const rows = await service.record.connection.db.selectFrom(table).selectAll().execute();
      expect(JSON.stringify(rows)).not.toContain(invitationSecret);
    }
  });

  it.each(['', 'tdi_', 'nonsense', "' or 1=1 --"])('is not valid as "%s"', async (secret) => {
    expect(await readInvitation(context(), secret)).toEqual(NOT_VALID);
    expect(await accept(secret)).toEqual(NOT_VALID);
  });
});

describe('an account', () => {
  it('has a sign-in name that nobody else has, in whatever letters, in any team', async () => {
    await invite();
    const again = aClinician({ signInName: 'S.WHIMBREL' });
    const taken = { refusal: { code: 'sign-in-name-taken' } };
    expect(await inviteAccount(context(), lead, again)).toMatchObject(taken);
    const { teamId } = service.otherTeam;
    expect(await inviteAccount(context(), { ...lead, teamId }, again)).toMatchObject(taken);
  });

  it('gets a sign-in name with its invitation where it has none, and keeps it', async () => {
    const [fromCommand] = (await listAccounts(context(), lead)).filter(
      ({ signInName }) => signInName === null,
    );
    if (fromCommand === undefined) throw new Error('No account without a sign-in name.');
    expect(await renew(fromCommand.id)).toMatchObject({
      refusal: { faults: [{ pointer: '/signInName', code: 'sign-in-name-needed' }] },
    });
    const named = valueOf(await renew(fromCommand.id, 'T.Dunlin'));
    expect(named.account).toMatchObject({ signInName: 't.dunlin' });
    expect(await renew(fromCommand.id, 'other.name')).toMatchObject({
      refusal: { faults: [{ code: 'sign-in-name-stays' }] },
    });
  });

  it('of a commissioner is made only for those who pay for the team', async () => {
    const { commissionerId } = service;
    const theirs = await createCommissioner(context(), {
      name: 'Samphire Commissioning',
      teamIds: [service.otherTeam.teamId],
    });
    const of = (id: string) => aClinician({ belonging: { role: 'commissioner', commissionerId: id } });
    expect(await inviteAccount(context(), lead, of(theirs))).toMatchObject({
      refusal: { faults: [{ pointer: '/commissionerId' }] },
    });
    const made = valueOf(await inviteAccount(context(), lead, of(commissionerId)));
    expect(made.account).toMatchObject({ role: 'commissioner', commissionerId });
  });

  it('is seen by leads of its team, or of a team that its commissioner pays for, and by nobody else', async () => {
    const { account } = await invite();
    const other = { ...lead, teamId: service.otherTeam.teamId };
    const ofOurs = (await listAccounts(context(), lead)).map(({ displayName }) => displayName);
    expect([...ofOurs].sort()).toEqual([
      'Person h.turnstone',
      'Samphire Whimbrel',
      'Test admin',
      'Test clinician',
      'Test commissioner',
      'Test lead',
    ]);
    expect((await listAccounts(context(), other)).map(({ displayName }) => displayName)).toEqual([
      'Test lead',
    ]);
    const absent = { refusal: { code: 'not-found', what: 'account' } };
    expect(await change(account.id, 1, { role: 'lead' }, other)).toMatchObject(absent);
    expect(
      await renewInvitation(context(), other, { accountId: account.id, signInName: null }),
    ).toMatchObject(absent);
  });

  it('shows nothing that is secret', async () => {
    const shown = JSON.stringify(await listAccounts(context(), lead));
    expect(shown).not.toMatch(/argon2|hash|secret/i);
  });

  it('is changed from the version that was seen, and the trail tells what changed', async () => {
    const { account } = await invite();
    expect(valueOf(await change(account.id, 1, { role: 'admin' }))).toMatchObject({
      version: 2,
      role: 'admin',
    });
    expect(await change(account.id, 1, { role: 'lead' })).toMatchObject({
      refusal: { code: 'changed-meanwhile', meanwhile: { version: 2 } },
    });
    const told = await service.record.connection.db
      .selectFrom('audit_event')
      .select('details')
      .where('action', '=', 'account-changed')
      .execute();
    expect(told.map(({ details }) => JSON.parse(details) as unknown)).toEqual([
      { changes: { role: ['clinician', 'admin'] }, reason: 'Agreed' },
    ]);
  });

  it('is changed by one of two who saw the same version', async () => {
    const { account } = await invite();
    const outcomes = await Promise.all(['admin', 'lead'].map((role) => change(account.id, 1, { role })));
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['done', 'refused']);
  });

  it('that is suspended is signed out everywhere and not signed in again, until it is active', async () => {
    const { account, invitationSecret } = await invite();
    const { sessionSecret } = valueOf(await accept(invitationSecret));
    valueOf(await change(account.id, 1, { status: 'suspended' }));
    expect(await whoseSession(context(), sessionSecret)).toBeNull();
    const again = () =>
      signIn(context(), { signInName: 's.whimbrel', passphrase: PASSPHRASE, address: ADDRESS });
    expect(await again()).toMatchObject({ refusal: { code: 'sign-in-refused' } });
    valueOf(await change(account.id, 2, { status: 'active' }));
    expect(await whoseSession(context(), sessionSecret)).toBeNull();
    expect(await again()).toMatchObject({ kind: 'done' });
  });

  it('with another role has it at once, in sessions that are open', async () => {
    const { account, invitationSecret } = await invite();
    const { sessionSecret } = valueOf(await accept(invitationSecret));
    valueOf(await change(account.id, 1, { role: 'admin' }));
    expect(await whoseSession(context(), sessionSecret)).toMatchObject({ actor: { role: 'admin' } });
  });

  it('of a lead is not changed by themselves, but for the name', async () => {
    const own = { refusal: { code: 'own-account' } };
    expect(await change(lead.accountId, 1, { role: 'admin' })).toMatchObject(own);
    expect(await change(lead.accountId, 1, { status: 'suspended' })).toMatchObject(own);
    expect(valueOf(await change(lead.accountId, 1, { displayName: 'Heather' }))).toMatchObject({
      displayName: 'Heather',
    });
  });

  it('does not cross between a team and a commissioner', async () => {
    const { account } = await invite();
    expect(await change(account.id, 1, { role: 'commissioner' })).toMatchObject({
      refusal: { faults: [{ pointer: '/role', code: 'other-scope' }] },
    });
  });

  it('of the last lead who can sign in is neither suspended nor given another role, by two at the same time either', async () => {
    // The lead of the fixture has a token, and so has the one with a passphrase: two who can sign in.
    const accounts = await listAccounts(context(), lead);
    const other = accounts.find(({ displayName }) => displayName === 'Test lead');
    if (other === undefined) throw new Error('The fixture has no lead.');
    const colleague: TeamMember = { ...lead, accountId: other.id };
    const outcomes = await Promise.all([
      change(other.id, 1, { status: 'suspended' }),
      change(lead.accountId, 1, { role: 'clinician' }, colleague),
    ]);
    expect(outcomes).toMatchObject([{ kind: 'done' }, { refusal: { code: 'last-lead' } }]);
    // Somebody who was invited and never came does not count.
    await invite({ belonging: { role: 'lead' } });
    expect(await change(lead.accountId, 1, { role: 'clinician' }, colleague)).toMatchObject({
      refusal: { code: 'last-lead' },
    });
  });
});

describe('a token', () => {
  const make = (actor: Actor, changes: { role?: Actor['role']; days?: number } = {}) =>
    createToken(context(), actor, { name: 'spreadsheet', role: actor.role, days: 30, ...changes });

  it('opens the service as its owner until it expires, and is stored as a hash', async () => {
    const { secret, token } = valueOf(await make(lead, { days: 1 }));
    expect(await actorByToken(context(), secret)).toEqual(lead);
    expect(token.expiresAt).toBe('2026-11-26T10:00:00.000Z');
    const rows = await service.record.connection.db.selectFrom('api_token').selectAll().execute();
    expect(JSON.stringify(rows)).not.toContain(secret);
    clock.moveBy(DAY_S - 1);
    expect(await actorByToken(context(), secret)).not.toBeNull();
    clock.moveBy(1);
    expect(await actorByToken(context(), secret)).toBeNull();
  });

  it.each([0, 367, 1.5, -1, Number.NaN])('is not made for %d days', async (days) => {
    expect(await make(lead, { days })).toMatchObject({ refusal: { faults: [{ pointer: '/days' }] } });
  });

  it('has no higher role than its owner', async () => {
    const admin: TeamMember = { ...lead, role: 'admin' };
    for (const role of ['clinician', 'lead', 'commissioner'] as const) {
      expect(await make(admin, { role })).toMatchObject({ refusal: { faults: [{ pointer: '/role' }] } });
    }
    const { secret } = valueOf(await make(lead, { role: 'clinician' }));
    expect(await actorByToken(context(), secret)).toMatchObject({ role: 'clinician' });
  });

  it('follows its owner to a lower role at once, and back', async () => {
    const { account, invitationSecret } = await invite({ belonging: { role: 'lead' } });
    valueOf(await accept(invitationSecret));
    const owner: TeamMember = { accountId: account.id, role: 'lead', teamId: service.teamId };
    const { secret } = valueOf(await make(owner));
    valueOf(await change(account.id, 1, { role: 'admin' }));
    expect(await actorByToken(context(), secret)).toMatchObject({ role: 'admin' });
    valueOf(await change(account.id, 2, { status: 'suspended' }));
    expect(await actorByToken(context(), secret)).toBeNull();
    valueOf(await change(account.id, 3, { role: 'lead', status: 'active' }));
    expect(await actorByToken(context(), secret)).toMatchObject({ role: 'lead' });
  });

  it('is taken back by its owner or a lead of the team, and by nobody else', async () => {
    const { account, invitationSecret } = await invite();
    valueOf(await accept(invitationSecret));
    const owner: TeamMember = { accountId: account.id, role: 'clinician', teamId: service.teamId };
    const { secret, token } = valueOf(await make(owner));
    const { teamId } = service.otherTeam;
    const absent = { refusal: { code: 'not-found', what: 'token' } };
    expect(
      await revokeToken(context(), { ...lead, teamId }, { tokenId: token.id, reason: null }),
    ).toMatchObject(absent);
    const colleague: TeamMember = { ...owner, accountId: lead.accountId };
    expect(await revokeToken(context(), colleague, { tokenId: token.id, reason: null })).toMatchObject(
      absent,
    );
    expect((await listTokens(context(), owner)).map(({ id }) => id)).toEqual([token.id]);
    expect((await listTokens(context(), lead)).map(({ id }) => id)).toContain(token.id);
    valueOf(await revokeToken(context(), lead, { tokenId: token.id, reason: null }));
    expect(await actorByToken(context(), secret)).toBeNull();
    valueOf(await revokeToken(context(), owner, { tokenId: token.id, reason: null }));
  });
});
