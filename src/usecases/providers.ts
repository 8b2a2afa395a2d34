import * as storage from '../storage/providers/providers.js';
import type { Context, TeamMember } from './context.js';

/** A site or a commissioner, by id and name. */
export interface Place {
  readonly id: string;
  readonly name: string;
}

/** The sites of the member's team. */
export async function sitesOfTeam(context: Context, actor: TeamMember): Promise<readonly Place[]> {
  return storage.sitesOfTeam(context.db, actor.teamId);
}

/** The commissioners who pay for the member's team. */
export async function commissionersOfTeam(context: Context, actor: TeamMember): Promise<readonly Place[]> {
  return storage.commissionersOfTeam(context.db, actor.teamId);
}
