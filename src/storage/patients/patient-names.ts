import type { Executor } from '../connection.js';

/** What a person is called in a list. */
export interface PatientName {
  readonly familyName: string;
  readonly givenName: string;
}

/**
 * Names by patient id; an id of another team is left out.
 *
 * @param ids at most as many as one page shows
 */
export async function patientNames(
  db: Executor,
  teamId: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, PatientName>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('patient')
    .select(['id', 'family_name', 'given_name'])
    .where('team_id', '=', teamId)
    .where('id', 'in', ids)
    .execute();
  return new Map(rows.map((row) => [row.id, { familyName: row.family_name, givenName: row.given_name }]));
}
