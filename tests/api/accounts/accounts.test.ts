import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { acceptInvitation } from '../../../src/usecases/accounts/accept-invitation.js';
import { whoseSession } from '../../../src/usecases/accounts/session.js';
import { createToken } from '../../../src/usecases/accounts/tokens.js';
import { PASSPHRASE, signedIn, valueOf } from '../../support/people.js';
import { asRecord, expectProblem, itemsOf, textAt, walkPages } from '../../support/response.js';
import { clientOf, startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

let service: TestApp;
beforeEach(async () => {
  service = await startApp();
});
afterEach(() => service.close());

const ACCOUNTS = '/api/v1/accounts';
const WHIMBREL = { displayName: 'Samphire Whimbrel', signInName: 'S.Whimbrel', role: 'clinician' } as const;
const context = () => service.record.context;
const lead = () => service.as('lead');

/** An invited account: its id, its address, and the secret that lets its holder in. */
async function givenInvited(changes: object = {}) {
  const response = await lead().post(ACCOUNTS, { ...WHIMBREL, ...changes });
  expect(response.status, response.text).toBe(201);
  const body = asRecord(response.body);
  const id = textAt(asRecord(body['account']), 'id');
  return { id, path: `${ACCOUNTS}/${id}`, secret: textAt(body, 'invitationSecret'), response };
}

/** The same account once its holder has chosen a passphrase; with the secret of their session. */
async function givenJoined(changes: object = {}) {
  const invited = await givenInvited(changes);
  const { sessionSecret } = valueOf(
    await acceptInvitation(context(), { secret: invited.secret, passphrase: PASSPHRASE }),
  );
  return { ...invited, sessionSecret };
}

const change = (path: string, changes: object, ifMatch?: string | null) =>
  lead().patch(path, { reason: 'Agreed with the team', changes }, ifMatch);
const latestEvent = async () => itemsOf(await lead().get('/api/v1/audit-events?limit=1'))[0];

describe('an invitation by a lead', () => {
  it('makes an account whose holder chooses the passphrase, and signs in', async () => {
    const { id, secret, response } = await givenInvited();
    expect(response.headers['location']).toBe(`${ACCOUNTS}/${id}`);
    expect(response.headers['etag']).toBe('"1"');
    expect(asRecord(response.body)['account']).toMatchObject({
      ...WHIMBREL,
      signInName: 's.whimbrel',
      status: 'active',
      hasPassphrase: false,
      invitation: { purpose: 'join', expiresAt: '2026-12-02T10:00:00.000Z' },
    });
    valueOf(await acceptInvitation(context(), { secret, passphrase: PASSPHRASE }));
    await signedIn(context(), 's.whimbrel');
    const read = await lead().get(`${ACCOUNTS}/${id}`);
    expect(read.body).toMatchObject({ hasPassphrase: true, invitation: null });
    expect([read.headers['etag'], read.text.includes(secret)]).toEqual(['"1"', false]);
  });

  it('is told to the trail, without its secret', async () => {
    const { id, secret } = await givenInvited();
    const event = await latestEvent();
    expect(event).toMatchObject({ action: 'account-invited', subjectId: id, role: 'lead' });
    expect(JSON.stringify(event)).not.toContain(secret);
  });

  it('is for a commissioner who pays for the team, and only where one is named', async () => {
    const role = 'commissioner';
    const { commissionerId } = service;
    const { response } = await givenInvited({ role, commissionerId, signInName: 'b.sanderling' });
    expect(asRecord(response.body)['account']).toMatchObject({ role, commissionerId });
    const pointers = ['/commissionerId'];
    const malformed = { status: 400, type: 'malformed-request', pointers };
    expectProblem(await lead().post(ACCOUNTS, { ...WHIMBREL, role }), malformed);
    expectProblem(await lead().post(ACCOUNTS, { ...WHIMBREL, commissionerId }), malformed);
    const stranger = { ...WHIMBREL, role, commissionerId: service.siteId };
    expectProblem(await lead().post(ACCOUNTS, stranger), { status: 422, type: 'rules-broken', pointers });
  });

  it.each([
    ['a name that may not be used', { signInName: 's whimbrel' }, 422, 'rules-broken', ['/signInName']],
    ['no role', { role: undefined }, 400, 'malformed-request', ['/role']],
    ['a role that there is not', { role: 'owner' }, 400, 'malformed-request', ['/role']],
    ['a blank name', { displayName: ' ' }, 400, 'malformed-request', ['/displayName']],
    ['a passphrase', { passphrase: PASSPHRASE }, 400, 'malformed-request', ['/passphrase']],
  ])('is refused with %s, and nothing is written', async (_name, changes, status, type, pointers) => {
    const before = await service.countRows();
    expectProblem(await lead().post(ACCOUNTS, { ...WHIMBREL, ...changes }), { status, type, pointers });
    expect(await service.countRows()).toEqual(before);
  });

  it('is refused for a name that somebody has, and renewed for whoever lost it', async () => {
    const { path, secret } = await givenInvited();
    expectProblem(await lead().post(ACCOUNTS, WHIMBREL), { status: 409, type: 'sign-in-name-taken' });
    const renewed = await lead().post(`${path}/invitations`, {});
    expect(renewed.status).toBe(201);
    const accept = (invitation: string) =>
      acceptInvitation(context(), { secret: invitation, passphrase: PASSPHRASE });
    expect(await accept(secret)).toMatchObject({ refusal: { code: 'invitation-not-valid' } });
    valueOf(await accept(textAt(asRecord(renewed.body), 'invitationSecret')));
    const reset = await lead().post(`${path}/invitations`, {});
    expect(asRecord(reset.body)['account']).toMatchObject({ invitation: { purpose: 'reset' } });
  });
});

describe('an account', () => {
  it('is listed by name, page by page, with those of the commissioners who pay for the team', async () => {
    await givenInvited();
    const { rows, pages } = await walkPages((cursor) =>
      lead().get(`${ACCOUNTS}?limit=2${cursor === null ? '' : `&cursor=${cursor}`}`),
    );
    expect(pages).toBe(3);
    expect(rows.map(({ displayName }) => displayName)).toEqual([
      'Samphire Whimbrel',
      'Test admin',
      'Test clinician',
      'Test commissioner',
      'Test lead',
    ]);
    expect(JSON.stringify(rows)).not.toMatch(/argon2|hash|secret/i);
  });

  it('gets another role from the version that was read; a later one is told what changed, by whom and why', async () => {
    const { path } = await givenInvited();
    const changed = await change(path, { role: 'admin' }, '"1"');
    expect([changed.status, changed.headers['etag']]).toEqual([200, '"2"']);
    expect(changed.body).toMatchObject({ version: 2, role: 'admin' });
    await change(path, { displayName: 'Samphire Godwit' }, '"2"');
    const late = await change(path, { role: 'lead' }, '"1"');
    expectProblem(late, { status: 412, type: 'changed-meanwhile' });
    expect(asRecord(late.body)['changedMeanwhile']).toMatchObject({
      version: 3,
      versions: [
        { version: 2, changedBy: { name: 'Test lead' }, reason: 'Agreed with the team' },
        { version: 3, changedBy: { name: 'Test lead' } },
      ],
      changes: [
        { field: 'displayName', former: 'Samphire Whimbrel', present: 'Samphire Godwit' },
        { field: 'role', former: 'clinician', present: 'admin' },
      ],
    });
    expect((await lead().get(path)).body).toMatchObject({ version: 3, role: 'admin' });
  });

  it('that is suspended opens nothing any more, by session or token, until it is active again', async () => {
    const { path, sessionSecret } = await givenJoined({ role: 'lead' });
    const { sessionSecret: other } = await signedIn(context(), 's.whimbrel');
    const made = await clientOf(service.app, await tokenOf(other)).get(ACCOUNTS);
    expect(made.status).toBe(200);
    const token = await tokenOf(other);
    expect((await change(path, { status: 'suspended' })).status).toBe(200);
    expect([await whoseSession(context(), sessionSecret), await whoseSession(context(), other)]).toEqual([
      null,
      null,
    ]);
    expectProblem(await clientOf(service.app, token).get(ACCOUNTS), { status: 401, type: 'not-signed-in' });
    expect((await change(path, { status: 'active' })).status).toBe(200);
    expect((await clientOf(service.app, token).get(ACCOUNTS)).status).toBe(200);
    expect(await whoseSession(context(), other)).toBeNull();
  });

  it('is signed out everywhere with a reason, which the trail is told', async () => {
    const { id, path, sessionSecret } = await givenJoined();
    await signedIn(context(), 's.whimbrel');
    const response = await lead().post(`${path}/sign-out`, { reason: 'A computer was stolen' });
    expect([response.status, response.body]).toEqual([200, { endedSessions: 2 }]);
    expect(await whoseSession(context(), sessionSecret)).toBeNull();
    expect(await latestEvent()).toMatchObject({
      action: 'signed-out-everywhere',
      subjectId: id,
      details: { ended: 2, reason: 'A computer was stolen' },
    });
    // Whoever was signed out may sign in again.
    await signedIn(context(), 's.whimbrel');
  });

  it('of the lead who asks keeps its role and status, and is not helped by themselves', async () => {
    const accounts = itemsOf(await lead().get(ACCOUNTS));
    const own = accounts.find(({ displayName }) => displayName === 'Test lead') ?? {};
    const path = `${ACCOUNTS}/${textAt(own, 'id')}`;
    const conflict = { status: 409, type: 'own-account' } as const;
    expectProblem(await change(path, { role: 'admin' }), conflict);
    expectProblem(await change(path, { status: 'suspended' }), conflict);
    expectProblem(await lead().post(`${path}/invitations`, { signInName: 'a.lead' }), conflict);
    expectProblem(await lead().post(`${path}/second-factor-reset`, { reason: 'Lost' }), conflict);
    expect((await change(path, { displayName: 'Heather Turnstone' })).status).toBe(200);
  });

  it.each([
    ['to a commissioner', { role: 'commissioner' }, 422, 'rules-broken', ['/changes/role']],
    ['to nothing else', {}, 400, 'malformed-request', ['/changes']],
    ['to another sign-in name', { signInName: 'x.y' }, 400, 'malformed-request', ['/changes/signInName']],
  ])('is not changed %s', async (_name, changes, status, type, pointers) => {
    const { path } = await givenInvited();
    expectProblem(await change(path, changes), { status, type, pointers });
  });

  it('of another team is absent', async () => {
    const theirs = itemsOf(await service.as('other-team').get(ACCOUNTS))[0] ?? {};
    const path = `${ACCOUNTS}/${textAt(theirs, 'id')}`;
    const absent = { status: 404, type: 'not-found' } as const;
    expectProblem(await lead().get(path), absent);
    expectProblem(await change(path, { status: 'suspended' }), absent);
    expectProblem(await lead().post(`${path}/sign-out`, { reason: 'Stolen' }), absent);
  });
});

/** A token that somebody makes in a session of theirs, as the lead they are. */
async function tokenOf(sessionSecret: string): Promise<string> {
  const found = await whoseSession(context(), sessionSecret);
  if (found === null) throw new Error('The session is over.');
  return valueOf(await createToken(context(), found.actor, { name: 'program', role: 'lead', days: 1 }))
    .secret;
}
