import type { DisclosurePolicy } from './policy.js';
import type { IssuedTotal } from './issued.js';
import { protectCount } from './protected-count.js';
import type { TableChoices } from './settle.js';
import { LISTS_FOR_FEW, TABLES } from './tables/table-list.js';

/**
 * Printed people of a universe: of fewer, the tables that give a percentage are printed by their list for few. Our own
 * choice: a group of one in twelve is then no longer small.
 */
const FEW_PEOPLE = 100;

/**
 * How each table is printed that nobody chose. A small count beside a percentage would take it out of the release, and the
 * percentage is what the service is held to; so of few people small groups are merged beforehand.
 *
 * It hangs on the printed total alone. Were it to hang on the counts, the list would tell of them to whoever knows the rule.
 *
 * @param choices of the lead; they stand
 * @example 40 received, nothing chosen -> { start: 'medium' }
 */
export function withDefaultLists(
  totals: readonly IssuedTotal[],
  policy: DisclosurePolicy,
  choices: TableChoices,
): TableChoices {
  const added = TABLES.flatMap(({ id, universe }) => {
    const list = LISTS_FOR_FEW[id];
    const total = totals.find((each) => each.universe === universe);
    if (list === undefined || choices[id] !== undefined || total === undefined) return [];
    const printed = protectCount(total.count, policy, total.hidden);
    return printed.kind === 'shown' && printed.value >= FEW_PEOPLE ? [] : [[id, list] as const];
  });
  return { ...choices, ...Object.fromEntries(added) };
}
