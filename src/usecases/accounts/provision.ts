import { isCommonPassword } from '../../auth/common-passwords.js';
import { hashPassphrase } from '../../auth/passphrase-hash.js';
import { makeToken } from '../../auth/token.js';
import { checkPassphrase, normalisePassphrase } from '../../domain/account/passphrase.js';
import type { Role } from '../../domain/account/role.js';
import { checkSignInName, normaliseSignInName } from '../../domain/account/sign-in-name.js';
import type { NhsNumberRange } from '../../domain/identity/nhs-number.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Fault, Outcome } from '../../domain/refusal/refusal.js';
import { findAccount, insertAccount } from '../../storage/accounts/accounts.js';
import { insertToken } from '../../storage/accounts/tokens.js';
import type { Executor } from '../../storage/connection.js';
import { insertCommissioner, insertTeam } from '../../storage/providers/providers.js';
import { recordEventOf } from '../audit/record-event.js';
import type { Context } from '../context.js';

/** A team as it was set up, with the ids of its sites by name. */
export interface ProvisionedTeam {
  readonly teamId: string;
  readonly siteIds: Readonly<Record<string, string>>;
}

/** Sets up a team with its sites. For the operator of the service: no route leads here. */
export async function createTeam(
  context: Context,
  team: { readonly name: string; readonly kind: NhsNumberRange; readonly siteNames: readonly string[] },
): Promise<ProvisionedTeam> {
  const teamId = context.newId();
  const sites = team.siteNames.map((name) => ({ id: context.newId(), name }));
  await context.db.transaction().execute(async (trx) => {
    await insertTeam(trx, { id: teamId, name: team.name, kind: team.kind, sites, now: context.clock.now() });
  });
  return { teamId, siteIds: Object.fromEntries(sites.map((site) => [site.name, site.id])) };
}

/** Sets up a commissioner who pays for some teams, and gives its id. */
export async function createCommissioner(
  context: Context,
  commissioner: { readonly name: string; readonly teamIds: readonly string[] },
): Promise<string> {
  const id = context.newId();
  await context.db.transaction().execute(async (trx) => {
    await insertCommissioner(trx, { id, ...commissioner });
  });
  return id;
}

/** Where an account belongs: to a team, or to a commissioner. */
export type Belonging =
  | { readonly role: Exclude<Role, 'commissioner'>; readonly teamId: string }
  | { readonly role: 'commissioner'; readonly commissionerId: string };

/**
 * Sets up an account with one API token.
 *
 * @param expiresAt instant (UTC) after which the token is refused
 * @returns ids, and the token itself: it is shown this once and stored as a hash
 */
export async function createAccount(
  context: Context,
  account: {
    readonly displayName: string;
    readonly belonging: Belonging;
    readonly tokenName: string;
    readonly expiresAt: string;
  },
): Promise<{ readonly accountId: string; readonly token: string }> {
  const { belonging } = account;
  const accountId = context.newId();
  const token = await context.db.transaction().execute(async (trx) => {
    await insertAccount(trx, {
      id: accountId,
      teamId: belonging.role === 'commissioner' ? null : belonging.teamId,
      commissionerId: belonging.role === 'commissioner' ? belonging.commissionerId : null,
      role: belonging.role,
      displayName: account.displayName,
      now: context.clock.now(),
    });
    return storeToken(context, trx, { accountId, role: belonging.role, ...account });
  });
  return { accountId, token };
}

/** What somebody signs in by. */
export interface Credentials {
  readonly signInName: string;
  readonly passphrase: string;
}

/** What is wrong with a sign-in name or a passphrase that is to be given to somebody; empty where both may be used. */
export function checkCredentials(credentials: Credentials): readonly Fault[] {
  const signInName = normaliseSignInName(credentials.signInName);
  const passphrase = normalisePassphrase(credentials.passphrase);
  return [
    ...checkSignInName('/signInName', signInName),
    ...checkPassphrase('/passphrase', passphrase, { signInName, isCommon: isCommonPassword }),
  ];
}

/**
 * Sets up an account whose holder signs in by name and passphrase. For the operator of the service: no route leads here.
 *
 * @returns the id, or what is wrong with the name or the passphrase
 */
export async function openAccount(
  context: Context,
  account: Credentials & { readonly displayName: string; readonly belonging: Belonging },
): Promise<Outcome<string>> {
  const faults = checkCredentials(account);
  if (faults.length > 0) return refused({ code: 'rules-broken', faults });
  const signInName = normaliseSignInName(account.signInName);
  const passphraseHash = await hashPassphrase(normalisePassphrase(account.passphrase));
  return context.db.transaction().execute(async (trx) => {
    if ((await findAccount(trx, { signInName })) !== null) return refused({ code: 'sign-in-name-taken' });
    return done(await storeAccount(context, trx, account, { signInName, passphraseHash }));
  });
}

/** Sets up an account of a program, which has tokens and no passphrase. For the operator of the service. */
export async function openProgramAccount(
  context: Context,
  account: { readonly displayName: string; readonly belonging: Belonging },
): Promise<string> {
  return context.db.transaction().execute((trx) => storeAccount(context, trx, account, {}));
}

async function storeAccount(
  context: Context,
  trx: Executor,
  { belonging, displayName }: { readonly displayName: string; readonly belonging: Belonging },
  credentials: { readonly signInName?: string; readonly passphraseHash?: string },
): Promise<string> {
  const id = context.newId();
  const { role } = belonging;
  const teamId = belonging.role === 'commissioner' ? null : belonging.teamId;
  const commissionerId = belonging.role === 'commissioner' ? belonging.commissionerId : null;
  const now = context.clock.now();
  await insertAccount(trx, { id, teamId, commissionerId, role, displayName, now, ...credentials });
  const nobody = { id: null, role: null, teamId };
  await recordEventOf(context, trx, nobody, {
    action: 'account-created',
    subjectId: id,
    details: { role, by: 'operator' },
  });
  return id;
}

/** Gives an account a further token, such as when the first one was lost. The token is shown this once. */
export async function issueToken(
  context: Context,
  request: {
    readonly accountId: string;
    readonly role: Role;
    readonly tokenName: string;
    readonly expiresAt: string;
  },
): Promise<string> {
  return context.db.transaction().execute((trx) => storeToken(context, trx, request));
}

async function storeToken(
  context: Context,
  trx: Executor,
  token: {
    readonly accountId: string;
    readonly role: Role;
    readonly tokenName: string;
    readonly expiresAt: string;
  },
): Promise<string> {
  const { secret, hash } = makeToken();
  await insertToken(trx, {
    id: context.newId(),
    accountId: token.accountId,
    name: token.tokenName,
    hash,
    role: token.role,
    now: context.clock.now(),
    expiresAt: token.expiresAt,
  });
  return secret;
}
