import { meanwhileSince } from '../../domain/history/history.js';
import type { VersionState } from '../../domain/history/history.js';
import { changesFor } from '../../domain/history/withheld.js';
import type { Refusal } from '../../domain/refusal/refusal.js';
import { DEFAULT_TEAM_SETTINGS } from '../../domain/settings/team-settings.js';
import type { Executor } from '../../storage/connection.js';
import {
  assessmentStates,
  patientStates,
  referralStates,
  sessionStates,
  settingsStates,
} from '../../storage/history/version-states.js';
import type { TeamMember } from '../context.js';

/** The versions of a record of which somebody says that one is before their eyes: a change is based on it. */
export type BasedOn = readonly number[];

/** A record whose versions are numbered. */
export type VersionedKind = 'patient' | 'referral' | 'assessment' | 'session' | 'settings';

/**
 * Refuses a change that is based on a version which is not the present one any more, telling what changed meanwhile.
 *
 * Ask it in the transaction of the change, so that of two who change one version only the first is let through.
 *
 * @param record its kind, its id (of the team for settings) and its present version
 * @returns null where the change is based on the present version
 */
export async function staleBase(
  trx: Executor,
  actor: TeamMember,
  record: { readonly kind: VersionedKind; readonly id: string; readonly version: number },
  basedOn: BasedOn,
): Promise<Refusal | null> {
  if (basedOn.includes(record.version)) return null;
  const states = await statesOf(trx, actor, record.kind, record.id);
  const { changes, ...meanwhile } = meanwhileSince(states, Math.max(...basedOn));
  return {
    code: 'changed-meanwhile',
    meanwhile: { ...meanwhile, version: record.version, changes: changesFor(actor.role, changes) },
  };
}

/** Every version of a record of the member's team in order. */
export async function statesOf(
  db: Executor,
  { teamId }: TeamMember,
  kind: VersionedKind,
  id: string,
): Promise<readonly VersionState[]> {
  switch (kind) {
    case 'patient':
      return patientStates(db, teamId, id);
    case 'referral':
      return referralStates(db, teamId, id);
    case 'assessment':
      return assessmentStates(db, teamId, id);
    case 'session':
      return sessionStates(db, teamId, id);
    case 'settings':
      return [DEFAULTS, ...(await settingsStates(db, teamId))];
  }
}

/** What holds while a team has chosen nothing: nobody made it. */
const DEFAULTS: VersionState = {
  version: 0,
  changedAt: '',
  changedBy: null,
  reason: null,
  state: DEFAULT_TEAM_SETTINGS,
};
