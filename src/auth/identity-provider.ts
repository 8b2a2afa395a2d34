import * as oidc from 'openid-client';
import { ACCEPTED_LINE } from '../domain/text/accepted-text.js';

/** How this service is known to a provider of OpenID Connect. */
export interface ProviderSettings {
  /** Address of the issuer; without encryption only on this very machine. */
  readonly issuer: string;
  readonly clientId: string;
  /** Null for a client that proves itself by PKCE alone. */
  readonly clientSecret: string | null;
  /** Where the provider sends people back to. */
  readonly returnAddress: string;
  readonly scope: string;
  /** Name of the claim whose values stand for roles. */
  readonly roleClaim: string;
}

/** What is kept in the browser of somebody who is at the provider, and held against the answer. */
export interface PendingSignIn {
  readonly state: string;
  readonly nonce: string;
  readonly codeVerifier: string;
}

/** Somebody as a provider knows them. */
export interface ProvidedIdentity {
  /** Issuer and subject: no other person ever has it. */
  readonly subject: string;
  readonly displayName: string;
  /** Values of the claim that stands for roles. */
  readonly roleValues: readonly string[];
}

/** Signs people in by a provider of OpenID Connect: authorisation code flow with PKCE, state and nonce. */
export interface IdentityProvider {
  /** Where to send the browser, and what to keep meanwhile. @throws where the provider cannot be reached */
  readonly begin: () => Promise<{ readonly address: string; readonly pending: PendingSignIn }>;
  /**
   * Who came back, by the answer in the address they came back to.
   *
   * @param query of that address, such as `?code=...&state=...`
   * @throws where the provider refused, cannot be reached, or its answer is not one to what was kept
   */
  readonly finish: (query: string, pending: PendingSignIn) => Promise<ProvidedIdentity>;
}

const LONGEST_REQUEST_S = 10;

/** The provider of the settings. What it says of itself is read when it is first needed, and kept. */
export function createIdentityProvider(settings: ProviderSettings): IdentityProvider {
  let known: oidc.Configuration | null = null;
  const configuration = async (): Promise<oidc.Configuration> => (known ??= await discover(settings));
  return {
    begin: async () => {
      const config = await configuration();
      const pending: PendingSignIn = {
        state: oidc.randomState(),
        nonce: oidc.randomNonce(),
        codeVerifier: oidc.randomPKCECodeVerifier(),
      };
      const address = oidc.buildAuthorizationUrl(config, {
        redirect_uri: settings.returnAddress,
        scope: settings.scope,
        state: pending.state,
        nonce: pending.nonce,
        code_challenge: await oidc.calculatePKCECodeChallenge(pending.codeVerifier),
        code_challenge_method: 'S256',
      });
      return { address: address.href, pending };
    },
    finish: async (query, pending) => {
      const config = await configuration();
      const answer = new URL(settings.returnAddress);
      answer.search = query;
      const tokens = await oidc.authorizationCodeGrant(config, answer, {
        expectedState: pending.state,
        expectedNonce: pending.nonce,
        pkceCodeVerifier: pending.codeVerifier,
        idTokenExpected: true,
      });
      const claims = tokens.claims();
      if (claims === undefined) throw new Error('The provider sent no identity.');
      const { sub, iss } = claims;
      // Many providers put names and groups there and not into the token.
      const hasMore = config.serverMetadata().userinfo_endpoint !== undefined;
      const more = hasMore ? await oidc.fetchUserInfo(config, tokens.access_token, sub) : {};
      const all: Readonly<Record<string, unknown>> = { ...more, ...claims };
      return {
        subject: `${iss} ${sub}`,
        displayName: nameOf(all),
        roleValues: textsOf(all[settings.roleClaim]),
      };
    },
  };
}

async function discover(settings: ProviderSettings): Promise<oidc.Configuration> {
  const { issuer, clientId, clientSecret } = settings;
  const isPlain = issuer.startsWith('http:');
  return oidc.discovery(
    new URL(issuer),
    clientId,
    clientSecret ?? undefined,
    clientSecret === null ? oidc.None() : oidc.ClientSecretBasic(clientSecret),
    { timeout: LONGEST_REQUEST_S, execute: isPlain ? [oidc.allowInsecureRequests] : [] },
  );
}

const LONGEST_NAME = 100;

/** The first of the usual claims that can stand on a page. */
function nameOf(claims: Readonly<Record<string, unknown>>): string {
  const names = ['name', 'preferred_username', 'email'].flatMap((claim) => textsOf(claims[claim]));
  const usable = names
    .map((name) => name.trim())
    .find((name) => name !== '' && name.length <= LONGEST_NAME && ACCEPTED_LINE.test(name));
  return usable ?? 'Name not given';
}

/** A claim of one text or several. */
function textsOf(claim: unknown): readonly string[] {
  const values: readonly unknown[] = Array.isArray(claim) ? claim : [claim];
  return values.filter((value) => typeof value === 'string');
}
