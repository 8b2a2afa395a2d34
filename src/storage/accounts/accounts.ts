import { ROLES } from '../../domain/account/role.js';
import type { Role } from '../../domain/account/role.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { memberOf } from '../row-mapping.js';

/** An account that may sign in: of a team, or of a commissioner. */
export interface Account {
  readonly id: string;
  readonly teamId: string | null;
  readonly commissionerId: string | null;
  readonly role: Role;
  readonly displayName: string;
}

/** Stores a new, active account. */
export async function insertAccount(
  db: Executor,
  account: Account & { readonly now: string },
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
    })
    .execute();
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

/** The account behind a token that is neither expired nor revoked, with the role of the token; null otherwise. */
export async function findAccountByToken(db: Executor, hash: string, now: string): Promise<Account | null> {
  const [row] = await activeAccount(db, { hash, now });
  if (row === undefined) return null;
  return {
    id: row.id,
    teamId: row.team_id,
    commissionerId: row.commissioner_id,
    role: memberOf(ROLES, row.role),
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
      'api_token.role',
    ])
    .where('api_token.token_hash', '=', value('hash'))
    .where('api_token.expires_at', '>', value('now'))
    .where('api_token.revoked_at', 'is', null)
    .where('account.status', '=', 'active'),
);
