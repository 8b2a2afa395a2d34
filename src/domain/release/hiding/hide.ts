import { countOf } from '../issued.js';
import type { CountedTable, IssuedTable, IssuedTotal } from '../issued.js';
import type { DisclosurePolicy } from '../policy.js';
import { hiddenForItself } from '../protected-count.js';
import type { UniverseId } from '../table-definition.js';
import { hideOneWay } from './one-way.js';
import type { Hidden } from './one-way.js';
import { hideTwoWay } from './two-way.js';

/**
 * Hides what a table must not show: small counts, and in an exact release what would give them away within the table.
 *
 * In a rounded release nothing else is hidden, since a mark must go on meaning a small count: what the attack finds there is
 * mended by merging categories.
 */
export function hideIn(table: CountedTable, policy: DisclosurePolicy): IssuedTable {
  const hidden: Hidden = new Map();
  for (const cell of table.cells) {
    const because = hiddenForItself(countOf(table, cell), policy);
    if (because !== null) hidden.set(cell.id, because);
  }
  if (policy.mode === 'exact' && hidden.size > 0) {
    if (table.columnsOf === null) hideOneWay(table, policy, hidden);
    else hideTwoWay(table, policy, hidden);
  }
  return withHidden(table, hidden);
}

/** A table with other cells hidden than before. */
export function withHidden(table: CountedTable, hidden: Hidden): IssuedTable {
  return { ...table, hidden: Object.fromEntries(hidden) };
}

/** The total of a universe; hidden only where it is small itself. */
export function issuedTotal(universe: UniverseId, count: number, policy: DisclosurePolicy): IssuedTotal {
  return { universe, count, hidden: hiddenForItself(count, policy) };
}
