import { DEFAULT_TEAM_SETTINGS } from '../../domain/settings/team-settings.js';
import type { TeamSettings } from '../../domain/settings/team-settings.js';
import type { Executor } from '../connection.js';

/** Settings with the number of their version; 0 while a team has chosen nothing and the defaults apply. */
export interface VersionedSettings {
  readonly version: number;
  readonly settings: TeamSettings;
}

/** The newest settings of a team. */
export async function currentSettings(db: Executor, teamId: string): Promise<VersionedSettings> {
  const row = await db
    .selectFrom('settings')
    .select(['version', 'document'])
    .where('team_id', '=', teamId)
    .orderBy('version', 'desc')
    .limit(1)
    .executeTakeFirst();
  if (row === undefined) return { version: 0, settings: DEFAULT_TEAM_SETTINGS };
  // Written by appendSettings only, from a checked value; choices that came later have their default.
  const chosen = JSON.parse(row.document) as Partial<TeamSettings>;
  return { version: row.version, settings: { ...DEFAULT_TEAM_SETTINGS, ...chosen } };
}

/** Adds a new version of a team's settings; former ones stay, so that old reports can be read. */
export async function appendSettings(
  db: Executor,
  change: { readonly teamId: string; readonly settings: TeamSettings; readonly now: string },
): Promise<number> {
  const { version } = await currentSettings(db, change.teamId);
  await db
    .insertInto('settings')
    .values({
      team_id: change.teamId,
      version: version + 1,
      document: JSON.stringify(change.settings),
      created_at: change.now,
    })
    .execute();
  return version + 1;
}
