import { consequenceOf } from '../../domain/audit/audit-action.js';
import type { Executor } from '../connection.js';

/** What of a team's record has changed: the courses of some people, or more than can be told. */
export type ChangesSince =
  { readonly kind: 'people'; readonly ids: ReadonlySet<string> } | { readonly kind: 'more' };

const MOST_PEOPLE = 500;

/** What of a team's record has changed since an entry of the trail. @param sequence number of that entry */
export async function changesSince(db: Executor, teamId: string, sequence: number): Promise<ChangesSince> {
  const events = await db
    .selectFrom('audit_event')
    .select(['action', 'patient_id', 'team_id'])
    .where('sequence', '>', sequence)
    .execute();
  const ids = new Set<string>();
  for (const { action, patient_id: id, team_id: ofTeam } of events) {
    // Asked for by its team, the whole trail of the team would be read to find the few that came last.
    if (ofTeam !== teamId) continue;
    const consequence = consequenceOf(action);
    if (consequence === 'none') continue;
    if (consequence === 'team' || id === null) return { kind: 'more' };
    ids.add(id);
    if (ids.size > MOST_PEOPLE) return { kind: 'more' };
  }
  return { kind: 'people', ids };
}
