import { consequenceOf } from '../../domain/audit/audit-action.js';
import type { AuditDetails } from '../../domain/audit/audit-event.js';
import type { Executor } from '../connection.js';

/** What of a team's record has changed: the courses of some people, or more than can be told. */
export type ChangesSince =
  { readonly kind: 'people'; readonly ids: ReadonlySet<string> } | { readonly kind: 'more' };

const MORE: ChangesSince = { kind: 'more' };
const MOST_PEOPLE = 500;

/** What of a team's record has changed since an entry of the trail. @param sequence number of that entry */
export async function changesSince(db: Executor, teamId: string, sequence: number): Promise<ChangesSince> {
  const events = await db
    .selectFrom('audit_event')
    .select(['action', 'patient_id', 'team_id', 'details'])
    .where('sequence', '>', sequence)
    .execute();
  const ids = new Set<string>();
  const referralIds = new Set<string>();
  for (const { action, patient_id: id, team_id: ofTeam, details } of events) {
    // Asked for by its team, the whole trail of the team would be read to find the few that came last.
    if (ofTeam !== teamId) continue;
    const consequence = consequenceOf(action);
    if (consequence === 'none') continue;
    if (consequence === 'referrals') {
      for (const referralId of referralsIn(details)) referralIds.add(referralId);
      continue;
    }
    if (consequence === 'team' || id === null) return MORE;
    ids.add(id);
  }
  if (ids.size + referralIds.size > MOST_PEOPLE) return MORE;
  for (const id of await peopleOf(db, [...referralIds])) ids.add(id);
  return { kind: 'people', ids };
}

/** The referrals whose changes an entry tells, such as those marked on a register. */
function referralsIn(details: string): readonly string[] {
  const { changes = {} } = JSON.parse(details) as AuditDetails;
  return Object.keys(changes);
}

async function peopleOf(db: Executor, referralIds: readonly string[]): Promise<readonly string[]> {
  if (referralIds.length === 0) return [];
  const rows = await db.selectFrom('referral').select('patient_id').where('id', 'in', referralIds).execute();
  return rows.map(({ patient_id: id }) => id);
}
