import type { ProvidedIdentity } from '../../auth/identity-provider.js';
import { mappedRole } from '../../domain/account/mapped-role.js';
import type { RoleMapping } from '../../domain/account/mapped-role.js';
import type { TeamRole } from '../../domain/account/role.js';
import { changedValues } from '../../domain/audit/changed-values.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { findAccount, insertAccount, updateAccount } from '../../storage/accounts/accounts.js';
import type { FullAccount } from '../../storage/accounts/accounts.js';
import type { Executor } from '../../storage/connection.js';
import { listTeams } from '../../storage/providers/providers.js';
import { recordEventOf } from '../audit/record-event.js';
import type { Context } from '../context.js';
import { openSession } from './sign-in.js';
import type { NewSession } from './sign-in.js';

/** What the operator lets a provider decide. */
export interface ProviderRules {
  readonly roles: RoleMapping;
  /** The team to which accounts belong that are made for people of the provider. */
  readonly teamName: string;
}

/**
 * Signs somebody in whom a provider of OpenID Connect has named.
 *
 * The account is found by issuer and subject and by nothing else: a name or an address of the post could be given to
 * somebody else. Where there is none it is made. Role and name follow the provider at each sign-in, even those of the
 * last lead: whoever lost the role there has lost it here. A suspended account stays suspended.
 *
 * @returns refused as `no-role-here` where nothing of the provider stands for a role, or its team is not there
 */
export async function signInByProvider(
  context: Context,
  rules: ProviderRules,
  identity: ProvidedIdentity,
): Promise<Outcome<NewSession>> {
  const { subject: oidcSubject, displayName } = identity;
  const role = mappedRole(identity.roleValues, rules.roles);
  return context.db.transaction().execute(async (trx) => {
    const known = await findAccount(trx, { oidcSubject });
    if (known?.status === 'suspended') {
      await recordEventOf(context, trx, known, { action: 'sign-in-refused', details: BY_PROVIDER });
      return refused({ code: 'sign-in-refused' });
    }
    const given = role === null ? null : { oidcSubject, displayName, role };
    const account =
      given === null
        ? null
        : known === null
          ? await makeAccount(context, trx, rules, given)
          : await followProvider(context, trx, known, given);
    if (account === null) {
      await recordEventOf(context, trx, known, { action: 'sign-in-refused', details: BY_PROVIDER });
      return refused({ code: 'no-role-here' });
    }
    return done(await openSession(context, trx, account, { method: 'provider' }));
  });
}

const BY_PROVIDER = { method: 'provider' } as const;

interface Given {
  readonly oidcSubject: string;
  readonly displayName: string;
  readonly role: TeamRole;
}

async function makeAccount(
  context: Context,
  trx: Executor,
  { teamName }: ProviderRules,
  given: Given,
): Promise<FullAccount | null> {
  const team = (await listTeams(trx)).find(({ name }) => name === teamName);
  if (team === undefined) return null;
  const id = context.newId();
  const teamId = team.id;
  await insertAccount(trx, { id, teamId, commissionerId: null, ...given, now: context.clock.now() });
  const nobody = { id: null, role: null, teamId };
  await recordEventOf(context, trx, nobody, {
    action: 'account-created',
    subjectId: id,
    details: { role: given.role, by: 'provider' },
  });
  return findAccount(trx, { id });
}

async function followProvider(
  context: Context,
  trx: Executor,
  account: FullAccount,
  given: Given,
): Promise<FullAccount | null> {
  const { id, displayName, role, status } = account;
  const before = { displayName, role };
  const after = { displayName: given.displayName, role: given.role };
  const changes = changedValues(before, after, []);
  if (Object.keys(changes).length === 0) return account;
  await updateAccount(trx, account, { ...after, status });
  await recordEventOf(context, trx, account, {
    action: 'account-changed',
    subjectId: id,
    details: { changes, by: 'provider' },
  });
  return findAccount(trx, { id });
}
