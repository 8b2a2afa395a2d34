import type { Fault } from '../../domain/refusal/refusal.js';
import type { Executor } from '../../storage/connection.js';
import { commissionersOfTeam, sitesOfTeam } from '../../storage/providers/providers.js';

/** Faults when a site is not one of the team's, or a commissioner does not pay for the team. */
export async function checkPlaces(
  db: Executor,
  teamId: string,
  places: { readonly siteId: string; readonly commissionerId?: string | null },
): Promise<readonly Fault[]> {
  const faults: Fault[] = [];
  const sites = await sitesOfTeam(db, teamId);
  if (!sites.some((site) => site.id === places.siteId)) {
    faults.push({ pointer: '/siteId', code: 'unknown-site', message: 'The team has no such site.' });
  }
  const commissionerId = places.commissionerId ?? null;
  if (commissionerId !== null) {
    const commissioners = await commissionersOfTeam(db, teamId);
    if (!commissioners.some((commissioner) => commissioner.id === commissionerId)) {
      faults.push({
        pointer: '/commissionerId',
        code: 'unknown-commissioner',
        message: 'No such commissioner pays for this team.',
      });
    }
  }
  return faults;
}
