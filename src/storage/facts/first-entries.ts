import type { Executor } from '../connection.js';
import { idsInStatement } from '../ids-in-statement.js';
import { groupBy } from './grouping.js';

/**
 * When those of some assessments were first entered whose content has never been corrected, although they have more than
 * one version: they were marked as entered in error and restored.
 *
 * @param ids of assessments whose present version stands
 * @returns instants (UTC) by id; one whose content was corrected is left out
 */
export async function firstEntriesOf(
  db: Executor,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('assessment')
    .select(['id', 'version', 'recorded_at', 'entered_in_error_at'])
    .where('id', 'in', idsInStatement(ids))
    .orderBy('version')
    .execute();
  return new Map(
    [...groupBy(rows, (row) => row.id)].flatMap(([id, versions]): readonly (readonly [string, string])[] => {
      const [first, ...later] = versions;
      const isMark = ({ entered_in_error_at: markedAt }: (typeof rows)[number]): boolean => markedAt !== null;
      // Each later version is a mark, or the restoration that follows one.
      const isUncorrected = later.every((row, index) => {
        const before = versions[index];
        return isMark(row) || (before !== undefined && isMark(before));
      });
      return first !== undefined && isUncorrected ? [[id, first.recorded_at]] : [];
    }),
  );
}
