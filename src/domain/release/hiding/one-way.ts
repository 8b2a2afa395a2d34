import { countOf } from '../issued.js';
import type { CountedCell, CountedTable } from '../issued.js';
import type { DisclosurePolicy } from '../policy.js';
import type { HiddenBecause } from '../protected-count.js';

/** What is hidden in a table, by id of the cell. */
export type Hidden = Map<string, HiddenBecause>;

/**
 * Hides further cells of a one-way table or a tree until those hidden for themselves cannot be worked out from a total:
 * from the total down, each branch by itself. What several tables give away together is for the attack to find.
 *
 * With the total shown and zeros printed, each of the hidden cells of a branch lies between 1 and their sum less one for
 * each other: as wide as the sum less their number.
 */
export function hideOneWay(table: CountedTable, policy: DisclosurePolicy, hidden: Hidden): void {
  const parents = [null, ...table.cells.filter((cell) => hasParts(table, cell)).map((cell) => cell.id)];
  for (const parent of parents) {
    if (parent !== null && hidden.has(parent)) continue;
    hideInBranch(
      table,
      table.cells.filter((cell) => cell.within === parent),
      policy,
      hidden,
    );
  }
}

function hideInBranch(
  table: CountedTable,
  cells: readonly CountedCell[],
  policy: DisclosurePolicy,
  hidden: Hidden,
): void {
  const added: CountedCell[] = [];
  while (!isBranchSafe(table, cells, policy, hidden)) {
    const next = smallestShown(table, cells, hidden);
    if (next === null) return;
    hidden.set(next.id, 'protects-others');
    added.unshift(next);
  }
  // A later, larger cell may have made an earlier one needless.
  for (const cell of added) {
    hidden.delete(cell.id);
    if (!isBranchSafe(table, cells, policy, hidden)) hidden.set(cell.id, 'protects-others');
  }
}

function isBranchSafe(
  table: CountedTable,
  cells: readonly CountedCell[],
  { minimumWidth }: DisclosurePolicy,
  hidden: Hidden,
): boolean {
  const out = cells.filter((cell) => hidden.has(cell.id));
  const spare = out.reduce((sum, cell) => sum + countOf(table, cell) - 1, 0);
  return out.length === 0 || (out.length > 1 && spare >= minimumWidth);
}

/** The smallest cell that is still shown and is not 0; null where there is none. A zero says nothing by being hidden. */
export function smallestShown(
  table: CountedTable,
  cells: readonly CountedCell[],
  hidden: ReadonlyMap<string, HiddenBecause>,
): CountedCell | null {
  const shown = cells.filter((cell) => !hidden.has(cell.id) && countOf(table, cell) > 0);
  return shown.sort((a, b) => countOf(table, a) - countOf(table, b))[0] ?? null;
}

function hasParts(table: CountedTable, { id }: CountedCell): boolean {
  return table.cells.some((cell) => cell.within === id);
}
