import { changedValues } from '../../domain/audit/changed-values.js';
import { done, refused } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import { checkSettings } from '../../domain/settings/check-settings.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import { appendSettings, currentSettings } from '../../storage/settings/settings.js';
import type { VersionedSettings } from '../../storage/settings/settings.js';
import { recordEvent } from '../audit/record-event.js';
import type { Context, TeamMember } from '../context.js';
import { staleBase } from '../history/based-on.js';
import type { BasedOn } from '../history/based-on.js';

/** The team's settings as they now hold. */
export async function readSettings(context: Context, actor: TeamMember): Promise<VersionedSettings> {
  return currentSettings(context.db, actor.teamId);
}

/** Adds a new version of the team's settings; former versions stay, and a report prints the one it used. */
export async function changeSettings(
  context: Context,
  actor: TeamMember,
  change: { readonly settings: TeamSettings; readonly reason: string; readonly basedOn: BasedOn },
): Promise<Outcome<VersionedSettings>> {
  return context.db.transaction().execute(async (trx) => {
    const former = await currentSettings(trx, actor.teamId);
    const { settings, reason } = change;
    const record = { kind: 'settings', id: actor.teamId, version: former.version } as const;
    const stale = await staleBase(trx, actor, record, change.basedOn);
    if (stale !== null) return refused(stale);
    const faults = checkSettings(settings);
    if (faults.length > 0) return refused({ code: 'rules-broken', faults });
    const { teamId, accountId } = actor;
    const version = await appendSettings(trx, {
      teamId,
      settings,
      reason,
      now: context.clock.now(),
      accountId,
    });
    await recordEvent(context, trx, actor, {
      action: 'settings-changed',
      details: { version, changes: changedValues(former.settings, settings, []), reason },
    });
    return done({ version, settings });
  });
}
