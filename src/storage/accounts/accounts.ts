import { ACCOUNT_STATUSES } from '../../domain/account/account.js';
import type { AccountStatus } from '../../domain/account/account.js';
import { ROLES } from '../../domain/account/role.js';
import type { Role } from '../../domain/account/role.js';
import type { Selectable } from 'kysely';
import type { Executor } from '../connection.js';
import { memberOf } from '../row-mapping.js';
import type { AccountTable } from '../account-tables.js';

/** Somebody who may sign in: of a team, or of a commissioner. */
export interface Account {
  readonly id: string;
  readonly teamId: string | null;
  readonly commissionerId: string | null;
  readonly role: Role;
  readonly displayName: string;
}

/** An account with what it signs in by. Never shown as it is: it holds secrets. */
export interface FullAccount extends Account {
  readonly status: AccountStatus;
  readonly version: number;
  readonly createdAt: string;
  readonly signInName: string | null;
  readonly passphraseHash: string | null;
  readonly passphraseSetAt: string | null;
  readonly secondFactor: SecondFactor | null;
  /** A code is asked for at every sign-in: the person has shown one. */
  readonly hasSecondFactor: boolean;
  readonly oidcSubject: string | null;
}

/** What codes are made from. */
export interface SecondFactor {
  /** Base32. */
  readonly secret: string;
  /** The latest time step of which a code was taken. */
  readonly lastStep: number | null;
}

/** Stores a new, active account. */
export async function insertAccount(
  db: Executor,
  account: Account & {
    readonly now: string;
    readonly signInName?: string;
    readonly passphraseHash?: string;
    readonly oidcSubject?: string;
  },
): Promise<void> {
  await db
    .insertInto('account')
    .values({
      id: account.id,
      team_id: account.teamId,
      commissioner_id: account.commissionerId,
      role: account.role,
      display_name: account.displayName,
      status: 'active',
      created_at: account.now,
      sign_in_name: account.signInName ?? null,
      passphrase_hash: account.passphraseHash ?? null,
      passphrase_set_at: account.passphraseHash === undefined ? null : account.now,
      oidc_subject: account.oidcSubject ?? null,
    })
    .execute();
}

/** An account by its id, its sign-in name or its subject at a provider; null where there is none. */
export async function findAccount(
  db: Executor,
  by: { readonly id: string } | { readonly signInName: string } | { readonly oidcSubject: string },
): Promise<FullAccount | null> {
  const all = db.selectFrom('account').selectAll();
  const query =
    'id' in by
      ? all.where('id', '=', by.id)
      : 'signInName' in by
        ? all.where('sign_in_name', '=', by.signInName)
        : all.where('oidc_subject', '=', by.oidcSubject);
  const row = await query.executeTakeFirst();
  return row === undefined ? null : accountFromRow(row);
}

/** The accounts of a team and of the commissioners who pay for it, by name. */
export async function accountsAroundTeam(db: Executor, teamId: string): Promise<readonly FullAccount[]> {
  const rows = await db
    .selectFrom('account')
    .selectAll()
    .where((eb) =>
      eb.or([
        eb('team_id', '=', teamId),
        eb(
          'commissioner_id',
          'in',
          eb.selectFrom('team_commissioner').select('commissioner_id').where('team_id', '=', teamId),
        ),
      ]),
    )
    .orderBy('display_name')
    .orderBy('id')
    .execute();
  return rows.map(accountFromRow);
}

/** What a lead may change of an account. */
export interface AccountChange {
  readonly displayName: string;
  readonly role: Role;
  readonly status: AccountStatus;
}

/** Changes an account and raises its version. */
export async function updateAccount(
  db: Executor,
  account: { readonly id: string; readonly version: number },
  change: AccountChange,
): Promise<void> {
  await db
    .updateTable('account')
    .set({
      display_name: change.displayName,
      role: change.role,
      status: change.status,
      version: account.version + 1,
    })
    .where('id', '=', account.id)
    .execute();
}

/** Whether, but for one account, an active lead is left in a team who has a way to sign in. */
export async function isLeadLeft(
  db: Executor,
  team: { readonly teamId: string; readonly without: string; readonly now: string },
): Promise<boolean> {
  const row = await db
    .selectFrom('account')
    .select('id')
    .where('team_id', '=', team.teamId)
    .where('role', '=', 'lead')
    .where('status', '=', 'active')
    .where('id', '<>', team.without)
    .where((eb) =>
      eb.or([
        eb('passphrase_hash', 'is not', null),
        eb('oidc_subject', 'is not', null),
        eb.exists(
          eb
            .selectFrom('api_token')
            .select('api_token.id')
            .whereRef('api_token.account_id', '=', 'account.id')
            .where('api_token.role', '=', 'lead')
            .where('api_token.revoked_at', 'is', null)
            .where('api_token.expires_at', '>', team.now),
        ),
      ]),
    )
    .limit(1)
    .executeTakeFirst();
  return row !== undefined;
}

/** An account as it is stored, with what it signs in by. */
export function accountFromRow(row: Selectable<AccountTable>): FullAccount {
  return {
    id: row.id,
    teamId: row.team_id,
    commissionerId: row.commissioner_id,
    role: memberOf(ROLES, row.role),
    displayName: row.display_name,
    status: memberOf(ACCOUNT_STATUSES, row.status),
    version: row.version,
    createdAt: row.created_at,
    signInName: row.sign_in_name,
    passphraseHash: row.passphrase_hash,
    passphraseSetAt: row.passphrase_set_at,
    secondFactor:
      row.second_factor_secret === null
        ? null
        : {
            secret: row.second_factor_secret,
            lastStep: row.second_factor_last_step,
          },
    hasSecondFactor: row.second_factor_confirmed_at !== null,
    oidcSubject: row.oidc_subject,
  };
}
