import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Provider } from 'oidc-provider';
import type { GrantContext } from 'oidc-provider';
import type { ProviderSettings } from '../../src/auth/identity-provider.js';

/** Somebody as the provider of the tests knows them. */
export interface ProviderPerson {
  readonly name?: string;
  readonly groups?: readonly string[];
}

/** A provider of OpenID Connect on this machine, at which people sign in without being asked anything. */
export interface TestProvider {
  readonly settings: ProviderSettings;
  /** Who there is by subject; a test may change it. */
  readonly people: Map<string, ProviderPerson>;
  /**
   * Goes to the provider as a browser would, and signs in there.
   *
   * @param subject who signs in; null for somebody who does not want to
   * @returns the address to which the provider sends the browser back
   */
  readonly visit: (address: string, subject: string | null) => Promise<string>;
  readonly close: () => Promise<void>;
}

/** Nothing is ever asked of this address: the tests take the path behind it. */
const RETURN_ADDRESS = 'https://tidemark.example/sign-in/provider/return';
const CLIENT = { clientId: 'tidemark', clientSecret: 'a secret that only the two share' } as const;

/** Starts a provider with a client that must use PKCE. */
export async function startProvider(): Promise<TestProvider> {
  const people = new Map<string, ProviderPerson>();
  let visitor: string | null = null;
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const issuer = `http://127.0.0.1:${port}`;
  const provider = new Provider(issuer, configuration(people));
  const answer = provider.callback();
  server.on('request', (request, response) => {
    if (request.url?.startsWith('/interaction/') !== true) return void answer(request, response);
    const result = visitor === null ? { error: 'access_denied' } : { login: { accountId: visitor } };
    void provider.interactionFinished(request, response, result);
  });
  return {
    people,
    settings: {
      issuer,
      ...CLIENT,
      returnAddress: RETURN_ADDRESS,
      scope: 'openid profile',
      roleClaim: 'groups',
    },
    visit: (address, subject) => {
      visitor = subject;
      return followTo(address, RETURN_ADDRESS);
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function configuration(people: ReadonlyMap<string, ProviderPerson>): object {
  return {
    clients: [
      {
        client_id: CLIENT.clientId,
        client_secret: CLIENT.clientSecret,
        redirect_uris: [RETURN_ADDRESS],
        response_types: ['code'],
        grant_types: ['authorization_code'],
      },
    ],
    // As with most providers, the groups are told to whoever asks with the token, and do not stand in it.
    claims: { openid: ['sub'], profile: ['name', 'groups'] },
    pkce: { required: () => true },
    cookies: { keys: ['of the tests'] },
    features: { devInteractions: { enabled: false } },
    interactions: { url: (_context: unknown, { uid }: { uid: string }) => `/interaction/${uid}` },
    findAccount: (_context: unknown, sub: string) => ({
      accountId: sub,
      claims: async () => ({ sub, ...people.get(sub) }),
    }),
    loadExistingGrant: async ({ oidc }: GrantContext) => {
      const { clientId } = oidc.client;
      const grant = new oidc.provider.Grant({ clientId, accountId: oidc.session.accountId });
      grant.addOIDCScope('openid profile');
      await grant.save();
      return grant;
    },
  };
}

/** Follows redirections with cookies until one leads to an address; that is not asked for. */
async function followTo(address: string, end: string): Promise<string> {
  const cookies = new Map<string, string>();
  let next = address;
  for (let step = 0; step < 10 && !next.startsWith(end); step += 1) {
    const cookie = [...cookies].map(([name, value]) => `${name}=${value}`).join('; ');
    const response = await fetch(next, { redirect: 'manual', headers: { cookie } });
    for (const line of response.headers.getSetCookie()) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
      cookies.set(name, value);
    }
    const location = response.headers.get('location');
    if (location === null) throw new Error(`The provider answered ${response.status} at ${next}.`);
    next = new URL(location, next).href;
  }
  return next;
}
