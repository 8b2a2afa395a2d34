import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createIdentityProvider } from '../../../src/auth/identity-provider.js';
import type { ProviderRules } from '../../../src/usecases/accounts/sign-in-by-provider.js';
import { pagesAs } from '../../support/page-client.js';
import type { PageClient } from '../../support/page-client.js';
import { itemsOf } from '../../support/response.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';
import { startProvider } from '../../support/test-provider.js';
import type { TestProvider } from '../../support/test-provider.js';

const RULES: ProviderRules = {
  teamName: 'Marram Coast PR team',
  roles: new Map([
    ['pr-leads', 'lead'],
    ['pr-clinicians', 'clinician'],
    ['pr-office', 'admin'],
  ]),
};
const SESSION = '__Host-tidemark';

let provider: TestProvider;
let service: TestApp;
let browser: PageClient;
beforeAll(async () => {
  provider = await startProvider();
});
afterAll(() => provider.close());
beforeEach(async () => {
  provider.people.clear();
  provider.people.set('subject-1', { name: 'Campion Avocet', groups: ['staff', 'pr-clinicians'] });
  service = await startApp(undefined, {
    oidc: { provider: createIdentityProvider(provider.settings), rules: RULES },
  });
  browser = await pagesAs(service, null);
});
afterEach(() => service.close());

/** Begins here, signs in at the provider, and comes back with its answer. */
async function signIn(subject: string | null = 'subject-1', from = '/sign-in/provider', as = browser) {
  const begun = await as.get(from);
  expect(begun.status).toBe(303);
  return as.get(pathOf(await provider.visit(begun.headers['location'] ?? '', subject)));
}

function pathOf(address: string): string {
  const { pathname, search } = new URL(address);
  return pathname + search;
}

const accounts = async () => itemsOf(await service.as('lead').get('/api/v1/accounts'));
const accountOf = async (name: string) => (await accounts()).find((each) => each['displayName'] === name);
const trail = async () => itemsOf(await service.as('lead').get('/api/v1/audit-events?limit=5'));
const patch = (id: unknown, changes: object) =>
  service.as('lead').patch(`/api/v1/accounts/${String(id)}`, { reason: 'Agreed', changes });

describe('signing in by a provider', () => {
  it('makes an account in the role of the claim, opens a session, and leads on', async () => {
    const response = await signIn('subject-1', '/sign-in/provider?next=%2Faccount%3Fa%3Db');
    expect([response.status, response.headers['location']]).toEqual([303, '/account?a=b']);
    const start = await browser.get('/account');
    expect(start.status).toBe(200);
    expect(start.text).toContain('Campion Avocet');
    expect(await accountOf('Campion Avocet')).toMatchObject({
      role: 'clinician',
      status: 'active',
      signInName: null,
      hasPassphrase: false,
      signsInByProvider: true,
    });
  });

  it('finds the same account the next time, and follows the provider to another role and name, which the trail tells', async () => {
    await signIn();
    const first = await accountOf('Campion Avocet');
    provider.people.set('subject-1', { name: 'Campion Godwit', groups: ['pr-office', 'pr-leads'] });
    await signIn();
    const second = await accountOf('Campion Godwit');
    expect(second).toMatchObject({ id: first?.['id'], role: 'lead', version: 2 });
    const changed = (await trail()).find(({ action }) => action === 'account-changed');
    expect(changed).toMatchObject({
      subjectId: first?.['id'],
      details: {
        by: 'provider',
        changes: { role: ['clinician', 'lead'], displayName: ['Campion Avocet', 'Campion Godwit'] },
      },
    });
    expect((await accounts()).filter((each) => each['signsInByProvider'] === true)).toHaveLength(1);
  });

  it('takes another subject for somebody else, whatever name they have', async () => {
    await signIn();
    provider.people.set('subject-2', { name: 'Campion Avocet', groups: ['pr-office'] });
    await signIn('subject-2');
    const alike = (await accounts()).filter((each) => each['displayName'] === 'Campion Avocet');
    expect(alike.map(({ role }) => role).sort()).toEqual(['admin', 'clinician']);
  });

  it('is refused to somebody without a role there, and makes no account', async () => {
    provider.people.set('subject-1', { name: 'Campion Avocet', groups: ['staff', 'lead', 'PR-LEADS'] });
    const before = (await accounts()).length;
    const response = await signIn();
    expect(response.status).toBe(403);
    expect(response.text).toContain('You have no role here');
    expect([browser.cookies.has(SESSION), (await accounts()).length]).toEqual([false, before]);
  });

  it('is refused to somebody whose role was taken away there', async () => {
    await signIn();
    browser.cookies.delete(SESSION);
    provider.people.set('subject-1', { name: 'Campion Avocet', groups: [] });
    expect((await signIn()).status).toBe(403);
    expect(browser.cookies.has(SESSION)).toBe(false);
  });

  it('is refused to a suspended account, which the provider does not bring back', async () => {
    await signIn();
    browser.cookies.delete(SESSION);
    const account = await accountOf('Campion Avocet');
    expect((await patch(account?.['id'], { status: 'suspended' })).status).toBe(200);
    provider.people.set('subject-1', { name: 'Campion Avocet', groups: ['pr-leads'] });
    expect((await signIn()).status).toBe(401);
    expect(browser.cookies.has(SESSION)).toBe(false);
    expect(await accountOf('Campion Avocet')).toMatchObject({ status: 'suspended', role: 'clinician' });
  });

  it('of a lead asks for the second factor where the team does', async () => {
    const { version, ...settings } = (await service.as('lead').get('/api/v1/settings')).body as {
      version: number;
    };
    const body = { ...settings, leadSecondFactor: 'required', reason: 'Agreed' };
    expect((await service.as('lead').put('/api/v1/settings', body, `"${version}"`)).status).toBe(200);
    provider.people.set('subject-1', { name: 'Campion Avocet', groups: ['pr-leads'] });
    expect((await signIn()).headers['location']).toBe('/account/second-factor');
  });

  it('takes what stands for a name only where it can be shown', async () => {
    provider.people.set('subject-1', { name: 'Avocet\u202e', groups: ['pr-office'] });
    await signIn();
    expect(await accountOf('Name not given')).toMatchObject({ role: 'admin' });
  });

  it('is offered on the sign-in page, and leads back to where somebody wanted to go', async () => {
    const page = await browser.get('/sign-in?next=%2Faccount');
    expect(page.text).toContain('href="/sign-in/provider?next=%2Faccount"');
  });
});

describe('the answer of a provider', () => {
  const returned = async () => {
    const begun = await browser.get('/sign-in/provider');
    return pathOf(await provider.visit(begun.headers['location'] ?? '', 'subject-1'));
  };
  const expectNobody = (client = browser) => expect(client.cookies.has(SESSION)).toBe(false);

  it('asks with PKCE, state and nonce, each new every time', async () => {
    const asked = async () =>
      new URL((await browser.get('/sign-in/provider')).headers['location'] ?? '').searchParams;
    const [one, other] = [await asked(), await asked()];
    expect([one.get('response_type'), one.get('code_challenge_method')]).toEqual(['code', 'S256']);
    for (const name of ['state', 'nonce', 'code_challenge']) {
      expect(one.get(name)?.length, name).toBeGreaterThanOrEqual(43);
      expect(one.get(name)).not.toBe(other.get(name));
    }
  });

  it('is taken from the browser that began, and from no other', async () => {
    const path = await returned();
    const other = await pagesAs(service, null);
    expect((await other.get(path)).status).toBe(400);
    await other.get('/sign-in/provider');
    expect((await other.get(path)).status).toBe(403);
    expectNobody(other);
  });

  it('is taken once', async () => {
    const path = await returned();
    const kept = new Map(browser.cookies);
    expect((await browser.get(path)).status).toBe(303);
    browser.cookies.clear();
    for (const [name, value] of kept) browser.cookies.set(name, value);
    expect((await browser.get(path)).status).toBe(403);
    expectNobody();
  });

  it.each([
    ['another state', (path: string) => path.replace(/state=[^&]+/, 'state=another')],
    ['another code', (path: string) => path.replace(/code=[^&]+/, 'code=another')],
    ['another issuer', (path: string) => path.replace(/iss=[^&]+/, 'iss=https%3A%2F%2Felsewhere.example')],
    ['nothing in it', (path: string) => path.replace(/\?.*$/, '')],
  ])('with %s lets nobody in', async (_name, tamper) => {
    expect((await browser.get(tamper(await returned()))).status).toBe(403);
    expectNobody();
  });

  it('that refuses lets nobody in', async () => {
    const response = await signIn(null);
    expect(response.status).toBe(403);
    expect(response.text).toContain('did not let you in');
    expectNobody();
  });

  it('is held to the nonce that was sent', async () => {
    const path = await returned();
    const cookie = '__Host-tidemark-provider';
    const kept = JSON.parse(Buffer.from(browser.cookies.get(cookie) ?? '', 'base64url').toString()) as object;
    const changed = Buffer.from(JSON.stringify({ ...kept, nonce: 'another' })).toString('base64url');
    browser.cookies.set(cookie, changed);
    expect((await browser.get(path)).status).toBe(403);
    expectNobody();
  });
});

describe('a service', () => {
  it('without a provider has no such page, and offers none', async () => {
    const plain = await startApp();
    const client = await pagesAs(plain, null);
    for (const path of ['/sign-in/provider', '/sign-in/provider/return?code=a&state=b']) {
      expect((await client.get(path)).status).toBe(404);
    }
    expect((await client.get('/sign-in')).text).not.toContain('/sign-in/provider');
    await plain.close();
  });

  it('whose provider does not answer says so, and lets people in by passphrase', async () => {
    const gone = await startProvider();
    await gone.close();
    const other = await startApp(undefined, {
      oidc: { provider: createIdentityProvider(gone.settings), rules: RULES },
    });
    const client = await pagesAs(other, null);
    const response = await client.get('/sign-in/provider');
    expect(response.status).toBe(503);
    expect(response.text).toContain('does not answer');
    expect((await client.get('/sign-in')).status).toBe(200);
    await other.close();
  });
});
