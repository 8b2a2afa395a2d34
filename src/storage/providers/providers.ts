import type { NhsNumberRange } from '../../domain/identity/nhs-number.js';
import { composedOnce } from '../composed-once.js';
import type { ValueOf } from '../composed-once.js';
import type { Executor } from '../connection.js';
import { memberOf } from '../row-mapping.js';

export interface Team {
  readonly id: string;
  readonly name: string;
  readonly kind: NhsNumberRange;
}

export interface Site {
  readonly id: string;
  readonly name: string;
}

/** A team by id. @throws Error when it is gone, which the record does not allow */
export async function getTeam(db: Executor, id: string): Promise<Team> {
  const [row] = await teamById(db, { id });
  if (row === undefined) throw new Error('The team is gone.');
  return { id: row.id, name: row.name, kind: memberOf(['live', 'demo'], row.kind) };
}

const teamById = composedOnce((db, value: ValueOf<{ id: string }>) =>
  db.selectFrom('team').select(['id', 'name', 'kind']).where('id', '=', value('id')),
);

/** Every team by name. */
export async function listTeams(db: Executor): Promise<readonly Team[]> {
  const rows = await db.selectFrom('team').select(['id', 'name', 'kind']).orderBy('name').execute();
  return rows.map((row) => ({ id: row.id, name: row.name, kind: memberOf(['live', 'demo'], row.kind) }));
}

/** The sites of a team by name. */
export async function sitesOfTeam(db: Executor, teamId: string): Promise<readonly Site[]> {
  return sites(db, { teamId });
}

const sites = composedOnce((db, value: ValueOf<{ teamId: string }>) =>
  db.selectFrom('site').select(['id', 'name']).where('team_id', '=', value('teamId')).orderBy('name'),
);

/** The commissioners who pay for a team, by name. */
export async function commissionersOfTeam(
  db: Executor,
  teamId: string,
): Promise<readonly { readonly id: string; readonly name: string }[]> {
  return db
    .selectFrom('commissioner')
    .innerJoin('team_commissioner', 'team_commissioner.commissioner_id', 'commissioner.id')
    .select(['commissioner.id', 'commissioner.name'])
    .where('team_commissioner.team_id', '=', teamId)
    .orderBy('commissioner.name')
    .execute();
}

/** The names of those of some commissioners that are in the store, by id. */
export async function commissionersById(
  db: Executor,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await db.selectFrom('commissioner').selectAll().where('id', 'in', ids).execute();
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** Name of a commissioner. @throws Error when it is gone, which the record does not allow */
export async function commissionerName(db: Executor, id: string): Promise<string> {
  const row = await db
    .selectFrom('commissioner')
    .select('name')
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  return row.name;
}

/** Stores a new team with its sites. */
export async function insertTeam(
  db: Executor,
  team: Team & { readonly sites: readonly Site[]; readonly now: string },
): Promise<void> {
  await db
    .insertInto('team')
    .values({ id: team.id, name: team.name, kind: team.kind, created_at: team.now })
    .execute();
  for (const site of team.sites) {
    await db.insertInto('site').values({ id: site.id, team_id: team.id, name: site.name }).execute();
  }
}

/** Stores a commissioner who pays for some teams. */
export async function insertCommissioner(
  db: Executor,
  commissioner: { readonly id: string; readonly name: string; readonly teamIds: readonly string[] },
): Promise<void> {
  await db.insertInto('commissioner').values({ id: commissioner.id, name: commissioner.name }).execute();
  for (const teamId of commissioner.teamIds) {
    await db
      .insertInto('team_commissioner')
      .values({ team_id: teamId, commissioner_id: commissioner.id })
      .execute();
  }
}
