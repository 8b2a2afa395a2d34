import type { FullAccount } from '../../storage/accounts/accounts.js';
import type { Executor } from '../../storage/connection.js';
import { currentSettings } from '../../storage/settings/settings.js';

/** Whether somebody must set up a second factor before anything else: a lead, where the team says so. */
export async function needsToEnrol(db: Executor, account: FullAccount): Promise<boolean> {
  if (account.hasSecondFactor) return false;
  if (account.role !== 'lead' || account.teamId === null) return false;
  const { settings } = await currentSettings(db, account.teamId);
  return settings.leadSecondFactor === 'required';
}
