import type { Executor } from '../connection.js';

/** The names of accounts by id; an id that is not there has none. */
export async function accountNames(
  db: Executor,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const distinct = [...new Set(ids)];
  if (distinct.length === 0) return new Map();
  const rows = await db
    .selectFrom('account')
    .select(['id', 'display_name'])
    .where('id', 'in', distinct)
    .execute();
  return new Map(rows.map((row) => [row.id, row.display_name]));
}
