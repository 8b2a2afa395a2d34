import { describe, expect, it } from 'vitest';
import { readProviderConfig } from '../../src/app/provider-config.js';
import { runCommandFile } from '../support/command.js';

const WHOLE = {
  TIDEMARK_PUBLIC_URL: 'https://tidemark.example',
  TIDEMARK_OIDC_ISSUER: 'https://identity.example/team',
  TIDEMARK_OIDC_CLIENT_ID: 'tidemark',
  TIDEMARK_OIDC_TEAM: 'Marram Coast PR team',
  TIDEMARK_OIDC_ROLES: 'pr-leads=lead',
} as const;

describe('the settings of a provider', () => {
  it('are none where no variable of them is set', () => {
    expect(readProviderConfig({ TIDEMARK_PUBLIC_URL: 'https://tidemark.example' })).toBeNull();
  });

  it('are read with their defaults', () => {
    const roles = 'pr-leads=lead, pr-clinicians=clinician,a=b=admin';
    expect(readProviderConfig({ ...WHOLE, TIDEMARK_OIDC_ROLES: roles })).toEqual({
      settings: {
        issuer: 'https://identity.example/team',
        clientId: 'tidemark',
        clientSecret: null,
        returnAddress: 'https://tidemark.example/sign-in/provider/return',
        scope: 'openid profile',
        roleClaim: 'groups',
      },
      rules: {
        teamName: 'Marram Coast PR team',
        roles: new Map([
          ['pr-leads', 'lead'],
          ['pr-clinicians', 'clinician'],
          ['a=b', 'admin'],
        ]),
      },
    });
  });

  it('may name a provider of this very machine without encryption', () => {
    const own = { ...WHOLE, TIDEMARK_OIDC_ROLES: 'a=lead', TIDEMARK_OIDC_ISSUER: 'http://127.0.0.1:9000' };
    expect(readProviderConfig(own)?.settings.issuer).toBe('http://127.0.0.1:9000');
  });

  it.each(Object.keys(WHOLE).flatMap((name) => [undefined, ' '].map((value) => ({ name, value }))))(
    'are refused with $name="$value", by name',
    ({ name, value }) => {
      expect(() => readProviderConfig({ ...WHOLE, [name]: value })).toThrow(name);
    },
  );

  it.each([
    ['TIDEMARK_OIDC_ISSUER', 'http://identity.example'],
    ['TIDEMARK_OIDC_ISSUER', 'http://127.0.0.1.identity.example'],
    ['TIDEMARK_OIDC_ISSUER', 'identity.example'],
    ['TIDEMARK_PUBLIC_URL', 'http://tidemark.example'],
    ['TIDEMARK_OIDC_ROLES', 'pr-leads'],
    ['TIDEMARK_OIDC_ROLES', '=lead'],
    ['TIDEMARK_OIDC_ROLES', 'pr-leads=owner'],
    // A commissioner belongs to no team: they are invited.
    ['TIDEMARK_OIDC_ROLES', 'payers=commissioner'],
    ['TIDEMARK_OIDC_ROLES', 'pr-leads=lead,'],
  ])('are refused with %s="%s", by name', (name, value) => {
    const environment = { ...WHOLE, TIDEMARK_OIDC_ROLES: 'pr-leads=lead', [name]: value };
    expect(() => readProviderConfig(environment)).toThrow(name);
  });

  it('that cannot be used keep the service from starting', async () => {
    const ended = await runCommandFile('main.ts', [], { TIDEMARK_OIDC_ISSUER: 'https://identity.example' });
    expect([ended.code, ended.stdout]).toEqual([1, '']);
    expect(ended.stderr).toMatch(/TIDEMARK_PUBLIC_URL is needed where any of TIDEMARK_OIDC_\* is set\./);
  });
});
