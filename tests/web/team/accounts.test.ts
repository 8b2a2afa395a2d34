import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { pagesAs, pagesWith } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { givenPerson, PASSPHRASE, signedIn } from '../../support/people.js';
import { accountIdOf } from '../../support/signed-in.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';
import { linkOf } from '../../../src/web/team/invitation-link-view.js';

const NAME = 'r.knot';
const REASON = 'Left the team';

let service: TestApp;
let lead: PageClient;
beforeEach(async () => {
  service = await startApp();
  lead = await pagesAs(service, 'lead');
});
afterEach(() => service.close());

const accounts = async () => (await service.countRows())['account'] ?? 0;
const stored = (id: string) =>
  service.record.connection.db
    .selectFrom('account')
    .selectAll()
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
const givenClinician = () =>
  givenPerson(service.record.context, { role: 'clinician', teamId: service.teamId }, NAME);

describe('inviting somebody', () => {
  const invite = (fields: Record<string, string>) =>
    lead.submit('/team/accounts/new', {
      displayName: 'Rosa Knot',
      signInName: NAME,
      role: 'clinician',
      ...fields,
    });

  it('shows a link once, by which a passphrase is chosen', async () => {
    const invited = await invite({});
    expect(invited.status).toBe(200);
    const path = /(\/invitation\/tdi_[\w-]{43})/.exec(invited.text)?.[1] ?? '';
    const list = await lead.get('/team/accounts');
    expect(list.text).toContain('Rosa Knot');
    expect(list.text).toContain('invited, until 2 December 2026, 10:00');
    expect(list.text).not.toContain(path);
    const rosa = await pagesAs(service, null);
    expect((await rosa.submit(path, { passphrase: PASSPHRASE, again: PASSPHRASE })).status).toBe(303);
    expect((await rosa.get('/account')).text).toContain('Clinician');
  });

  it('makes accounts of commissioners who pay for the team', async () => {
    expect((await invite({ role: `commissioner:${service.commissionerId}` })).status).toBe(200);
    const { text } = await lead.get('/team/accounts');
    expect(text.match(/Commissioner/g)?.length).toBeGreaterThan(1);
  });

  it.each([
    ['no name', { displayName: '' }, 'This must be given.'],
    ['a sign-in name with a space', { signInName: 'r knot' }, 'Use 3 to 80 letters'],
    ['no role', { role: '' }, 'Choose a role.'],
    ['a role that there is not', { role: 'chief' }, 'Choose a role.'],
    ['a commissioner who pays for others', { role: 'commissioner:elsewhere' }, 'Choose a commissioner'],
  ])('is refused with %s, nothing is made and what was typed is kept', async (_what, fields, message) => {
    const before = await accounts();
    const refused = await invite(fields);
    expect(refused.status).toBe(422);
    expect(refused.text).toContain(message);
    expect(refused.text).toContain(`value="${'signInName' in fields ? fields.signInName : NAME}"`);
    expect(await accounts()).toBe(before);
  });

  it('is refused with a sign-in name that somebody has', async () => {
    await givenClinician();
    const refused = await invite({});
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('Somebody has this sign-in name.');
  });
});

describe('changing an account', () => {
  const change = (id: string, fields: Record<string, string>) =>
    lead.submit(`/team/accounts/${id}`, {
      displayName: 'Rosa Knot',
      role: 'admin',
      status: 'active',
      reason: REASON,
      ...fields,
    });

  it('gives another role, which holds at once', async () => {
    const id = await givenClinician();
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    expect((await change(id, {})).status).toBe(303);
    expect(await stored(id)).toMatchObject({ display_name: 'Rosa Knot', role: 'admin' });
    expect((await pagesWith(service, sessionSecret).get('/account')).text).toContain('Administrator');
  });

  it('suspends somebody, who is signed out at once', async () => {
    const id = await givenClinician();
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    await change(id, { role: 'clinician', status: 'suspended' });
    expect((await pagesWith(service, sessionSecret).get('/account')).status).toBe(303);
    expect((await lead.get('/team/accounts')).text).toContain('suspended');
  });

  it('needs a reason', async () => {
    const id = await givenClinician();
    const refused = await change(id, { reason: ' ' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('Give the reason');
    expect((await stored(id)).role).toBe('clinician');
  });

  it('that is based on an older version is refused and shows what changed meanwhile', async () => {
    const id = await givenClinician();
    await change(id, { displayName: 'Rosa Knot-Dunlin', role: 'clinician' });
    const stale = await change(id, { displayName: 'Rosa K', version: '1' });
    expect(stale.status).toBe(412);
    expect(stale.text).toContain('Somebody changed this while you were typing');
    expect(stale.text).toContain('Rosa Knot-Dunlin');
    expect(stale.text).toContain('value="Rosa K"');
    expect((await stored(id)).display_name).toBe('Rosa Knot-Dunlin');
  });

  it('keeps the version that was read where something else was wrong', async () => {
    const id = await givenClinician();
    const faulty = await change(id, { version: '1', reason: '' });
    expect(faulty.text).toContain('name="version" value="1"');
  });

  it('of one’s own role or of the last lead is refused in words', async () => {
    const own = await change(await accountIdOf(service, 'lead'), { role: 'admin' });
    expect(own.status).toBe(422);
    expect(own.text).toContain('Another lead must do this for you.');
  });

  it('of another team is as if there were none', async () => {
    const { id } = await service.record.connection.db
      .selectFrom('account')
      .select('id')
      .where('team_id', '=', service.otherTeam.teamId)
      .executeTakeFirstOrThrow();
    expect((await lead.get(`/team/accounts/${id}`)).status).toBe(404);
    expect((await lead.get('/team/accounts/no-id')).status).toBe(404);
  });
});

describe('helping somebody', () => {
  it('makes a link for a new passphrase; the present one holds until it is used', async () => {
    const id = await givenClinician();
    const made = await lead.submit(`/team/accounts/${id}`, {}, `/team/accounts/${id}/invitation`);
    expect(made.status).toBe(200);
    expect(made.text).toMatch(/\/invitation\/tdi_[\w-]{43}/);
    await signedIn(service.record.context, NAME);
  });

  it('ends every session of theirs for a reason', async () => {
    const id = await givenClinician();
    const { sessionSecret } = await signedIn(service.record.context, NAME);
    const path = `/team/accounts/${id}/sign-out-everywhere`;
    expect((await lead.submit(`/team/accounts/${id}`, { signOutReason: '' }, path)).status).toBe(422);
    expect((await pagesWith(service, sessionSecret).get('/account')).status).toBe(200);
    expect((await lead.submit(`/team/accounts/${id}`, { signOutReason: 'Tablet stolen' }, path)).status).toBe(
      303,
    );
    expect((await pagesWith(service, sessionSecret).get('/account')).status).toBe(303);
  });
});

it('a token of the team is taken back by the lead', async () => {
  const list = await lead.get('/team/tokens');
  expect(list.text).toContain('Test admin');
  const row = list.text.split('<tr>').find((text) => text.includes('Test admin')) ?? '';
  const action = /action="([^"]+)"/.exec(row)?.[1] ?? '';
  expect((await lead.submit('/team/tokens', {}, action)).status).toBe(303);
  expect((await service.as('admin').get('/api/v1/patients')).status).toBe(401);
});

it.each(['admin', 'clinician', 'commissioner'] as const)('%s sees none of it', async (role) => {
  const pages = await pagesAs(service, role);
  for (const path of ['/team', '/team/accounts', '/team/tokens', '/team/settings', '/team/audit-trail']) {
    expect((await pages.get(path)).status, path).toBe(403);
  }
  expect((await pages.get('/account')).text).not.toContain('href="/team"');
});

it('a link is for an encrypted line, but on the own machine', () => {
  expect(linkOf('tidemark.example', 'tdi_x')).toBe('https://tidemark.example/invitation/tdi_x');
  expect(linkOf('127.0.0.1:4100', 'tdi_x')).toBe('http://127.0.0.1:4100/invitation/tdi_x');
  expect(linkOf('127.0.0.1.elsewhere.example', 'tdi_x')).toMatch(/^https:/);
});
