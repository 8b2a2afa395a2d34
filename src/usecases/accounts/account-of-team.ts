import { findAccount } from '../../storage/accounts/accounts.js';
import type { FullAccount } from '../../storage/accounts/accounts.js';
import type { Executor } from '../../storage/connection.js';
import { commissionersOfTeam } from '../../storage/providers/providers.js';
import type { TeamMember } from '../context.js';

/** An account that a lead may see: of the own team, or of a commissioner who pays for it; null for any other. */
export async function accountSeenBy(
  db: Executor,
  actor: TeamMember,
  accountId: string,
): Promise<FullAccount | null> {
  const account = await findAccount(db, { id: accountId });
  if (account === null) return null;
  if (account.commissionerId === null) return account.teamId === actor.teamId ? account : null;
  return (await paysFor(db, actor, account.commissionerId)) ? account : null;
}

/** Whether a commissioner pays for somebody's team. */
export async function paysFor(db: Executor, actor: TeamMember, commissionerId: string): Promise<boolean> {
  const paying = await commissionersOfTeam(db, actor.teamId);
  return paying.some(({ id }) => id === commissionerId);
}
