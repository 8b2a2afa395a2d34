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
  return { version: row.version, settings: settingsOf(row.document) };
}

/** Written by appendSettings only, from a checked value; choices that came later have their default. */
function settingsOf(document: string): TeamSettings {
  const chosen = JSON.parse(document) as Partial<TeamSettings>;
  return { ...DEFAULT_TEAM_SETTINGS, ...chosen };
}

/** Every version of a team's settings in order, with its author, instant and reason. */
export async function settingsVersions(
  db: Executor,
  teamId: string,
): Promise<
  readonly {
    readonly version: number;
    readonly changedAt: string;
    readonly authorId: string | null;
    readonly reason: string | null;
    readonly state: object;
  }[]
> {
  const rows = await db
    .selectFrom('settings')
    .selectAll()
    .where('team_id', '=', teamId)
    .orderBy('version')
    .execute();
  return rows.map((row) => ({
    version: row.version,
    changedAt: row.created_at,
    authorId: row.created_by,
    reason: row.reason,
    state: settingsOf(row.document),
  }));
}

/** Adds a new version of a team's settings; former ones stay, so that old reports can be read. */
export async function appendSettings(
  db: Executor,
  change: {
    readonly teamId: string;
    readonly settings: TeamSettings;
    readonly reason: string;
    readonly now: string;
    readonly accountId: string;
  },
): Promise<number> {
  const { version } = await currentSettings(db, change.teamId);
  await db
    .insertInto('settings')
    .values({
      team_id: change.teamId,
      version: version + 1,
      document: JSON.stringify(change.settings),
      created_at: change.now,
      created_by: change.accountId,
      reason: change.reason,
    })
    .execute();
  return version + 1;
}
