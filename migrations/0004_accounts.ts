import { sql } from 'kysely';
import type { ColumnDefinitionBuilder, Kysely } from 'kysely';

/** How people sign in: names, passphrases, second factors, invitations, sessions, and the delays of wrong attempts. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await widenAccounts(db);
  await createInvitations(db);
  await createSessions(db);
  await createDelays(db);
}

async function widenAccounts(db: Kysely<unknown>): Promise<void> {
  const columns: readonly (readonly [string, 'text' | 'integer', Column])[] = [
    [
      'version',
      'integer',
      (column) =>
        column
          .notNull()
          .defaultTo(1)
          .check(sql`version >= 1`),
    ],
    ['sign_in_name', 'text', (column) => column.check(sql`sign_in_name = lower(sign_in_name)`)],
    ['passphrase_hash', 'text', optional],
    ['passphrase_set_at', 'text', optional],
    ['second_factor_secret', 'text', optional],
    ['second_factor_confirmed_at', 'text', optional],
    ['second_factor_last_step', 'integer', optional],
    ['oidc_subject', 'text', optional],
  ];
  for (const [name, type, build] of columns) {
    await db.schema.alterTable('account').addColumn(name, type, build).execute();
  }
  for (const column of ['sign_in_name', 'oidc_subject']) {
    await db.schema
      .createIndex(`account_by_${column}`)
      .unique()
      .on('account')
      .column(column)
      .where(sql<boolean>`${sql.ref(column)} is not null`)
      .execute();
  }
  await db.schema.createIndex('account_by_team').on('account').column('team_id').execute();
  await db.schema.createIndex('api_token_by_account').on('api_token').column('account_id').execute();
}

async function createInvitations(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('invitation')
    .addColumn('id', 'text', primaryKey)
    .addColumn('account_id', 'text', ofAccount)
    .addColumn('purpose', 'text', (column) => column.notNull().check(sql`purpose in ('join', 'reset')`))
    .addColumn('token_hash', 'text', (column) => column.notNull().unique())
    .addColumn('created_by', 'text', ofAccount)
    .addColumn('created_at', 'text', required)
    .addColumn('expires_at', 'text', required)
    .addColumn('used_at', 'text')
    .addColumn('revoked_at', 'text')
    .addCheckConstraint('used_or_revoked', sql`used_at is null or revoked_at is null`)
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema.createIndex('invitation_by_account').on('invitation').column('account_id').execute();
}

async function createSessions(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('login_session')
    .addColumn('id', 'text', primaryKey)
    .addColumn('account_id', 'text', ofAccount)
    .addColumn('token_hash', 'text', (column) => column.notNull().unique())
    .addColumn('second_factor_passed', 'integer', (column) =>
      column.notNull().check(sql`second_factor_passed in (0, 1)`),
    )
    .addColumn('created_at', 'text', required)
    .addColumn('last_used_at', 'text', required)
    .addColumn('expires_at', 'text', required)
    .addColumn('ended_at', 'text')
    .addColumn('ended_reason', 'text', (column) =>
      column.check(
        sql`ended_reason in ('signed-out', 'signed-out-everywhere', 'passphrase-changed', 'second-factor-changed', 'suspended')`,
      ),
    )
    .addCheckConstraint('ended_whole', sql`(ended_at is null) = (ended_reason is null)`)
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema
    .createIndex('login_session_open')
    .on('login_session')
    .column('account_id')
    .where(sql<boolean>`ended_at is null`)
    .execute();
}

async function createDelays(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('sign_in_delay')
    .addColumn('key_hash', 'text', primaryKey)
    .addColumn('kind', 'text', (column) => column.notNull().check(sql`kind in ('account', 'address')`))
    .addColumn('failures', 'integer', (column) => column.notNull().check(sql`failures >= 0`))
    .addColumn('last_failed_at', 'text', required)
    .addColumn('blocked_until', 'text')
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema.createIndex('sign_in_delay_by_time').on('sign_in_delay').column('last_failed_at').execute();
}

type Column = (column: ColumnDefinitionBuilder) => ColumnDefinitionBuilder;

const optional: Column = (column) => column;
const required: Column = (column) => column.notNull();
const primaryKey: Column = (column) => column.primaryKey().notNull();
const ofAccount: Column = (column) => column.notNull().references('account.id');
