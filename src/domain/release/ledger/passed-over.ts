import { oneWayCells } from '../count-tables.js';
import { withDefaultLists } from '../default-lists.js';
import { hideIn } from '../hiding/hide.js';
import type { IssuedRelease, IssuedTable } from '../issued.js';
import { findTable } from '../tables/table-list.js';

/**
 * A table as it would have stood by its default list, and by each between that and the one it is printed by.
 *
 * They were passed over for what they would have told, so a reader is granted every mark of theirs, as though they had been
 * printed with nothing but their marks: that a group was small, not how many it was. The default list itself tells nothing.
 *
 * @example age by `coarse`, 3 of the people under 60 -> age by `fine`, with `under-60` hidden
 */
export function passedOver(table: IssuedTable, { policy, totals }: IssuedRelease): readonly IssuedTable[] {
  if (table.columnsOf !== null) return [];
  const { tableId, codeListId } = table;
  const lists = findTable(tableId)?.codeLists ?? [];
  const at = (listId: string | undefined) => lists.findIndex(({ id }) => id === listId);
  const first = Math.max(0, at(withDefaultLists(totals, policy, {})[tableId]));
  return lists
    .slice(first, Math.max(first, at(codeListId)))
    .map((list) => hideIn({ ...table, codeListId: list.id, cells: oneWayCells(list) }, policy));
}
