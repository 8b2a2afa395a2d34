import { lowerRole, ROLES } from '../../domain/account/role.js';
import type { Role } from '../../domain/account/role.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { memberOf } from '../row-mapping.js';
import type { Account } from './accounts.js';

/** An API token as it may be shown: of the secret there is nothing. */
export interface StoredToken {
  readonly id: string;
  readonly accountId: string;
  readonly name: string;
  readonly role: Role;
  readonly createdAt: string;
  readonly expiresAt: string;
  readonly revokedAt: string | null;
}

/** Stores a token by its hash. */
export async function insertToken(
  db: Executor,
  token: {
    readonly id: string;
    readonly accountId: string;
    readonly name: string;
    readonly hash: string;
    readonly role: Role;
    readonly now: string;
    readonly expiresAt: string;
  },
): Promise<void> {
  await db
    .insertInto('api_token')
    .values({
      id: token.id,
      account_id: token.accountId,
      name: token.name,
      token_hash: token.hash,
      role: token.role,
      created_at: token.now,
      expires_at: token.expiresAt,
      revoked_at: null,
    })
    .execute();
}

/**
 * The active account behind a token that is neither expired nor revoked; null otherwise.
 *
 * @returns the account in the lower of the token's role and its own
 */
export async function findAccountByToken(db: Executor, hash: string, now: string): Promise<Account | null> {
  const [row] = await activeAccount(db, { hash, now });
  if (row === undefined) return null;
  const role = lowerRole(memberOf(ROLES, row.token_role), memberOf(ROLES, row.role));
  if (role === null) return null;
  return {
    id: row.id,
    teamId: row.team_id,
    commissionerId: row.commissioner_id,
    role,
    displayName: row.display_name,
  };
}

const activeAccount = composedOnce((db, value: ValueOf<{ hash: string; now: string }>) =>
  db
    .selectFrom('api_token')
    .innerJoin('account', 'account.id', 'api_token.account_id')
    .select([
      'account.id',
      'account.team_id',
      'account.commissioner_id',
      'account.display_name',
      'account.role',
      'api_token.role as token_role',
    ])
    .where('api_token.token_hash', '=', value('hash'))
    .where('api_token.expires_at', '>', value('now'))
    .where('api_token.revoked_at', 'is', null)
    .where('account.status', '=', 'active'),
);

/** The tokens of an account, or those of everybody of a team, latest first. */
export async function listStoredTokens(
  db: Executor,
  of: { readonly accountId: string } | { readonly teamId: string },
): Promise<readonly StoredToken[]> {
  const all = db
    .selectFrom('api_token')
    .innerJoin('account', 'account.id', 'api_token.account_id')
    .select([
      'api_token.id',
      'api_token.account_id',
      'api_token.name',
      'api_token.role',
      'api_token.created_at',
      'api_token.expires_at',
      'api_token.revoked_at',
    ]);
  const query =
    'accountId' in of
      ? all.where('api_token.account_id', '=', of.accountId)
      : all.where('account.team_id', '=', of.teamId);
  const rows = await query.orderBy('api_token.created_at', 'desc').orderBy('api_token.id', 'desc').execute();
  return rows.map((row) => ({
    id: row.id,
    accountId: row.account_id,
    name: row.name,
    role: memberOf(ROLES, row.role),
    createdAt: row.created_at,
    expiresAt: row.expires_at,
    revokedAt: row.revoked_at,
  }));
}

/** Takes a token back. */
export async function revokeStoredToken(db: Executor, id: string, now: string): Promise<void> {
  await db.updateTable('api_token').set({ revoked_at: now }).where('id', '=', id).execute();
}
