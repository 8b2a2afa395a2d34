import { sql } from 'kysely';
import type { RawBuilder } from 'kysely';
import type { Ownership, RecordTable, StoredRow } from '../../domain/exports/record-table.js';
import type { Executor } from '../connection.js';
import { letOthersWork } from '../let-others-work.js';

/** Rows read at a time. */
const BATCH_ROWS = 2000;

/**
 * The rows of a table that belong to a team, in the order of the key, some at a time.
 *
 * @param db a transaction, so that all tables are seen as they stood at one moment
 */
export async function* rowsOfTeam(
  db: Executor,
  teamId: string,
  table: RecordTable,
): AsyncGenerator<readonly StoredRow[]> {
  const columns = sql.join(table.columns.map(({ name }) => sql.ref(name)));
  const key = sql.join(table.key.map((name) => sql.ref(name)));
  let last: StoredRow | undefined;
  for (;;) {
    const after = last === undefined ? sql`` : sql`and (${key}) > (${sql.join(valuesOf(table.key, last))})`;
    const { rows } = await sql<StoredRow>`
      select ${columns} from ${sql.table(table.name)}
      where ${belongsTo(teamId, table.owned)} ${after}
      order by ${key} limit ${BATCH_ROWS}
    `.execute(db);
    if (rows.length > 0) yield rows;
    if (rows.length < BATCH_ROWS) return;
    last = rows.at(-1);
    await letOthersWork();
  }
}

function valuesOf(names: readonly string[], row: StoredRow): readonly unknown[] {
  return names.map((name) => row[name]);
}

function belongsTo(teamId: string, owned: Ownership): RawBuilder<unknown> {
  switch (owned.by) {
    case 'team':
      return sql`${sql.ref(owned.column)} = ${teamId}`;
    case 'parent':
      return sql`${sql.ref(owned.column)} in (
        select ${sql.ref(owned.parentColumn)} from ${sql.table(owned.table)} where team_id = ${teamId}
      )`;
    case 'named-commissioners':
      return sql`id in (
        select commissioner_id from team_commissioner where team_id = ${teamId}
        union select commissioner_id from referral where team_id = ${teamId} and commissioner_id is not null
        union select commissioner_id from ${sql.table('release')} where team_id = ${teamId}
      )`;
  }
}
