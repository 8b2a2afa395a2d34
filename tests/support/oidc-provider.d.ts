/** What the tests use of the package, which brings no types. */
declare module 'oidc-provider' {
  import type { IncomingMessage, ServerResponse } from 'node:http';

  interface ProviderInstance {
    readonly callback: () => (request: IncomingMessage, response: ServerResponse) => Promise<void>;
    readonly interactionFinished: (
      request: IncomingMessage,
      response: ServerResponse,
      result: object,
    ) => Promise<void>;
  }

  interface Grant {
    readonly addOIDCScope: (scope: string) => void;
    readonly save: () => Promise<string>;
  }

  /** What a provider is given when it looks for what somebody has agreed to. */
  export interface GrantContext {
    readonly oidc: {
      readonly client: { readonly clientId: string };
      readonly session: { readonly accountId: string };
      readonly provider: {
        readonly Grant: new (of: { readonly clientId: string; readonly accountId: string }) => Grant;
      };
    };
  }

  export const Provider: new (issuer: string, configuration: object) => ProviderInstance;
}
