import type { WorkGroupId } from './work-list.js';

/** Anything that can stand in a group. */
export interface Sortable {
  readonly group: WorkGroupId;
  readonly dueOn: string;
  readonly daysLate: number;
  /** Breaks ties, so that the order is the same at every look. */
  readonly id: string;
}

/** The entries of one group, the oldest first, with how many there are and how many are late. */
export interface Grouped<Entry> {
  readonly group: WorkGroupId;
  readonly entries: readonly Entry[];
  readonly count: number;
  /** Those due before today. */
  readonly late: number;
}

/**
 * Puts entries into their groups.
 *
 * @param order every group once, in the order wanted; a group with nothing in it stays, with no entries
 */
export function groupWork<Entry extends Sortable>(
  entries: readonly Entry[],
  order: readonly WorkGroupId[],
): readonly Grouped<Entry>[] {
  return order.map((group) => {
    const found = entries.filter((entry) => entry.group === group).sort(oldestFirst);
    const late = found.filter((entry) => entry.daysLate > 0).length;
    return { group, entries: found, count: found.length, late };
  });
}

function oldestFirst(a: Sortable, b: Sortable): number {
  if (a.dueOn !== b.dueOn) return a.dueOn < b.dueOn ? -1 : 1;
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}
