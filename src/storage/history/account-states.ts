import type { AuditDetails } from '../../domain/audit/audit-event.js';
import type { VersionState } from '../../domain/history/history.js';
import type { FullAccount } from '../accounts/accounts.js';
import type { Executor } from '../connection.js';

/**
 * Every version of an account, the present one last, as the audit trail tells of its changes.
 *
 * @param teamId the team that reads; who changed the account is named where they belong to it
 */
export async function accountStates(
  db: Executor,
  account: FullAccount,
  teamId: string,
): Promise<readonly VersionState[]> {
  const rows = await db
    .selectFrom('audit_event')
    .leftJoin('account', (join) =>
      join.onRef('account.id', '=', 'audit_event.account_id').on('account.team_id', '=', teamId),
    )
    .select([
      'audit_event.occurred_at',
      'audit_event.details',
      'account.id as author_id',
      'account.display_name as author_name',
    ])
    .where('audit_event.action', '=', 'account-changed')
    .where('audit_event.subject_id', '=', account.id)
    .orderBy('audit_event.sequence', 'desc')
    .execute();
  const { displayName, role, status } = account;
  let state: Readonly<Record<string, unknown>> = { displayName, role, status };
  let { version } = account;
  const states: VersionState[] = [];
  for (const row of rows) {
    const { changes = {}, reason = null } = JSON.parse(row.details) as AuditDetails;
    const { author_id: accountId, author_name: name } = row;
    const changedBy = accountId === null || name === null ? null : { accountId, name };
    states.unshift({ version, changedAt: row.occurred_at, changedBy, reason, state });
    const before = Object.entries(changes).map(([field, [former]]) => [field, former] as const);
    state = { ...state, ...Object.fromEntries(before) };
    version -= 1;
  }
  const first = { version, changedAt: account.createdAt, changedBy: null, reason: null, state };
  return [first, ...states];
}
