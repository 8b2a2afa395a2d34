import * as storage from '../storage/providers/providers.js';
import type { Actor, Context, TeamMember } from './context.js';

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

/** Name of the team of whoever is signed in, or of the commissioner. */
export async function placeNameOf(context: Context, actor: Actor): Promise<string> {
  if (actor.role !== 'commissioner') return (await storage.getTeam(context.reader, actor.teamId)).name;
  return storage.commissionerName(context.reader, actor.commissionerId);
}
