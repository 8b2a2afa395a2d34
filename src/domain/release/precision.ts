import { countOf } from './issued.js';
import type { IssuedRelease } from './issued.js';
import type { ProtectedRelease } from './protected-release.js';
import { findTable } from './tables/table-list.js';

/** What a release loses against its counts; for the team's lead only. */
export interface Precision {
  readonly cells: number;
  readonly hiddenCells: number;
  /** Counts shown that differ from what was counted, and by how much at most, in people. */
  readonly roundedCells: number;
  readonly mostRoundedBy: number;
  /** Percentages of enough people in truth: as printed, null where left out, and as counted. */
  readonly shares: readonly {
    readonly title: string;
    readonly printedPercent: number | null;
    readonly countedPercent: number;
  }[];
}

/** Compares a release with the counts behind it. */
export function precisionOf(issued: IssuedRelease, release: ProtectedRelease): Precision {
  let [cells, hiddenCells, roundedCells, mostRoundedBy] = [0, 0, 0, 0];
  for (const table of issued.tables) {
    const printed = release.tables.find(({ id }) => id === table.tableId);
    for (const cell of table.cells) {
      const count = printed?.cells.find(({ id }) => id === cell.id)?.count;
      cells += 1;
      if (count?.kind !== 'shown') {
        hiddenCells += 1;
        continue;
      }
      const by = Math.abs(count.value - countOf(table, cell));
      if (by > 0) roundedCells += 1;
      mostRoundedBy = Math.max(mostRoundedBy, by);
    }
  }
  return { cells, hiddenCells, roundedCells, mostRoundedBy, shares: sharesOf(issued, release) };
}

function sharesOf(issued: IssuedRelease, release: ProtectedRelease): Precision['shares'] {
  const printed = new Map(
    release.tables.flatMap(({ shares }) => shares.map((share) => [share.id, share.percent] as const)),
  );
  return issued.tables.flatMap((table) =>
    (findTable(table.tableId)?.shares ?? []).flatMap(({ id, title, numerator, denominator }) => {
      const n = countOf(table, { of: denominator });
      if (n < issued.policy.minimumForPercent) return [];
      const countedPercent = (100 * countOf(table, { of: numerator })) / n;
      return [{ title, printedPercent: printed.get(id) ?? null, countedPercent }];
    }),
  );
}
