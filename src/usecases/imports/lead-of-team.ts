import { firstActiveLead } from '../../storage/accounts/leads.js';
import { listTeams, sitesOfTeam } from '../../storage/providers/providers.js';
import type { Context, TeamMember } from '../context.js';

/** The lead in whose name a command works, and the site that it names. */
export interface CommandLead {
  readonly teamName: string;
  readonly lead: TeamMember;
  readonly siteId: string | null;
}

/**
 * The lead of a team in whose name an operator's command works.
 *
 * @returns in words why there is none
 */
export async function leadOfTeam(
  context: Context,
  teamName: string,
  siteName: string | null,
): Promise<CommandLead | string> {
  const team = (await listTeams(context.db)).find(({ name }) => name === teamName);
  if (team === undefined) return `There is no team "${teamName}".`;
  const accountId = await firstActiveLead(context.db, team.id);
  if (accountId === null) return `The team "${teamName}" has no lead. Make one with account:create.`;
  const sites = await sitesOfTeam(context.db, team.id);
  const site = siteName === null ? null : sites.find(({ name }) => name === siteName);
  if (site === undefined) return `The team "${teamName}" has no site "${siteName ?? ''}".`;
  return { teamName, lead: { accountId, role: 'lead', teamId: team.id }, siteId: site?.id ?? null };
}

/** The key of a request is for the import as a whole, not for the rows of it. */
export function withoutKey({ accountId, role, teamId }: TeamMember): TeamMember {
  return { accountId, role, teamId };
}
