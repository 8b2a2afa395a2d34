import { hideIn } from './hiding/hide.js';
import type { CountedTable } from './issued.js';
import type { CountedRelease } from './protect-release.js';
import type { TableChoices } from './settle.js';
import { printedCount } from './summaries.js';
import type { CodeList, ShareDefinition, TableDefinition } from './table-definition.js';
import { TABLES } from './tables/table-list.js';

/**
 * How each table is printed that nobody chose: as fine as its percentages allow. A small count beside a percentage would
 * take it out of the release, and the percentage is what the service is held to; merged, it can be printed.
 *
 * The list is the finest of those that print most percentages, those with targets first. What the attack then finds in it is
 * mended as everywhere.
 *
 * @param count counts the release by some choices
 * @param choices of the lead; they stand
 * @returns the choices with what was added: nothing for a table whose finest list is as good as any
 * @example one person started late, 25 within 90 days, 12 left -> { start: 'medium' }
 */
export function listsForPercentages(
  count: (choices: TableChoices) => CountedRelease,
  choices: TableChoices,
): TableChoices {
  const open = TABLES.filter(({ id, shares }) => shares.length > 0 && choices[id] === undefined);
  const steps = Math.max(0, ...open.map(({ codeLists }) => codeLists.length));
  const worths = new Map<string, number[]>();
  for (let step = 0; step < steps; step += 1) {
    const asked = open.flatMap((table) => {
      const list = table.codeLists[step];
      return list === undefined ? [] : [[table.id, list.id] as const];
    });
    const counted = count({ ...choices, ...Object.fromEntries(asked) });
    for (const [id] of asked) {
      worths.set(id, [...(worths.get(id) ?? []), worthOf(id, counted)]);
    }
  }
  const added = open.flatMap((table) => {
    const list = bestOf(table, worths.get(table.id) ?? []);
    return list === table.codeLists[0] ? [] : [[table.id, list.id] as const];
  });
  return { ...choices, ...Object.fromEntries(added) };
}

function bestOf({ codeLists }: TableDefinition, worths: readonly number[]): CodeList {
  const best = Math.max(0, ...worths);
  return codeLists[worths.indexOf(best)] ?? codeLists[0];
}

/** More than any number of percentages without a target. */
const WORTH_OF_TARGET = 100;

function worthOf(tableId: string, release: CountedRelease): number {
  const table = release.tables.find((each) => each.tableId === tableId);
  const shares = TABLES.find(({ id }) => id === tableId)?.shares ?? [];
  if (table === undefined) return 0;
  return shares
    .filter((share) => isPrintable(share, table, release))
    .reduce((sum, { targetKey }) => sum + (targetKey === null ? 1 : WORTH_OF_TARGET), 0);
}

function isPrintable(
  { numerator, denominator }: ShareDefinition,
  table: CountedTable,
  { policy }: CountedRelease,
): boolean {
  const hidden = hideIn(table, policy);
  const others = denominator.filter((category) => !numerator.includes(category));
  const [k, rest] = [numerator, others].map((of) => printedCount(hidden, of, { policy }));
  if (k === null || k === undefined || rest === null || rest === undefined) return false;
  return k + rest >= policy.minimumForPercent;
}
