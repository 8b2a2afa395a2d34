import type { ProviderSettings } from '../auth/identity-provider.js';
import { TEAM_ROLES } from '../domain/account/role.js';
import type { TeamRole } from '../domain/account/role.js';
import type { ProviderRules } from '../usecases/accounts/sign-in-by-provider.js';
import { PROVIDER_RETURN_PATH } from '../web/sign-in/provider-pages.js';
import { commandRefused } from './run-command.js';

/** Sign-in by a provider of OpenID Connect, as the operator has set it up. */
export interface ProviderConfig {
  readonly settings: ProviderSettings;
  readonly rules: ProviderRules;
}

type Environment = Readonly<Record<string, string | undefined>>;

const PREFIX = 'TIDEMARK_OIDC_';

/**
 * Reads how people sign in by a provider of OpenID Connect.
 *
 * `TIDEMARK_OIDC_ISSUER`, `_CLIENT_ID`, `_CLIENT_SECRET` (none for a public client), `_TEAM` (name of the team that new
 * accounts belong to), `_ROLES` (such as `pr-leads=lead,pr-office=admin`), `_ROLE_CLAIM` (groups), `_SCOPE` (openid
 * profile), and `TIDEMARK_PUBLIC_URL`, the address under which people open the service.
 *
 * @returns null where none of them is set
 * @throws the refusal of a command when one is missing or cannot be used
 */
export function readProviderConfig(environment: Environment): ProviderConfig | null {
  if (!Object.keys(environment).some((name) => name.startsWith(PREFIX))) return null;
  const publicAddress = address(environment, 'TIDEMARK_PUBLIC_URL');
  return {
    settings: {
      issuer: address(environment, `${PREFIX}ISSUER`),
      clientId: needed(environment, `${PREFIX}CLIENT_ID`),
      clientSecret: environment[`${PREFIX}CLIENT_SECRET`] ?? null,
      returnAddress: new URL(PROVIDER_RETURN_PATH, publicAddress).href,
      scope: environment[`${PREFIX}SCOPE`] ?? 'openid profile',
      roleClaim: environment[`${PREFIX}ROLE_CLAIM`] ?? 'groups',
    },
    rules: {
      teamName: needed(environment, `${PREFIX}TEAM`),
      roles: roles(needed(environment, `${PREFIX}ROLES`)),
    },
  };
}

function needed(environment: Environment, name: string): string {
  const value = environment[name]?.trim() ?? '';
  if (value === '') throw commandRefused(`${name} is needed where any of ${PREFIX}* is set.`);
  return value;
}

/** An address with encryption, or of this very machine. */
function address(environment: Environment, name: string): string {
  const text = needed(environment, name);
  const url = URL.canParse(text) ? new URL(text) : null;
  const isOwn = url?.protocol === 'http:' && ['127.0.0.1', '[::1]', 'localhost'].includes(url.hostname);
  if (url?.protocol === 'https:' || isOwn) return text;
  throw commandRefused(`${name} must be an https address, such as https://tidemark.example.`);
}

function roles(text: string): ReadonlyMap<string, TeamRole> {
  const pairs = text.split(',').map((pair): readonly [string, TeamRole] => {
    const [, value = '', name = ''] = /^(.*)=([a-z]+)$/s.exec(pair.trim()) ?? [];
    const role = TEAM_ROLES.find((candidate) => candidate === name);
    if (value.trim() === '' || role === undefined) {
      throw commandRefused(
        `${PREFIX}ROLES must name a role for each value, such as pr-leads=lead,pr-clinicians=clinician,pr-office=admin.`,
      );
    }
    return [value.trim(), role];
  });
  return new Map(pairs);
}
