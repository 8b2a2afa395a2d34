import type { Period } from '../calendar/period.js';
import type { JudgeContext } from '../indicators/indicator.js';
import { codeListsOf } from './exposure.js';
import { countTable, countTwoWay } from './count-tables.js';
import type { People } from './count-tables.js';
import { issuedTotal } from './hiding/hide.js';
import type { CountedTable } from './issued.js';
import type { DisclosurePolicy } from './policy.js';
import type { CountedRelease } from './protect-release.js';
import { LEFT_OUT } from './settle.js';
import type { TableChoices } from './settle.js';
import { UNIVERSES } from './table-definition.js';
import type { CodeList, TableDefinition } from './table-definition.js';
import { TABLES, TWO_WAY_TABLES } from './tables/table-list.js';

/** What a release is counted of. */
export interface ReleaseCounting {
  readonly ref: string;
  readonly commissionerId: string;
  readonly period: Period & { readonly kind: 'quarter' | 'year' };
  readonly policy: DisclosurePolicy;
  readonly corrects: string | null;
  readonly people: People;
  readonly context: JudgeContext;
}

/** Counts every table of the fixed list that the period may have, by the code lists that were chosen. */
export function countRelease(
  { ref, commissionerId, period, policy, corrects, people, context }: ReleaseCounting,
  choices: TableChoices,
): CountedRelease {
  const isYear = period.kind === 'year';
  const oneWay = TABLES.filter(
    ({ id, periods }) => (isYear || periods === 'every') && choices[id] !== LEFT_OUT,
  )
    .map((table) => ({ table, counted: countTable(table, listOf(table.id, choices), people, context) }))
    .filter(({ table, counted }) => hasEnough(table, counted, policy))
    .map(({ counted }) => counted);
  // A two-way table stands beside the one-way table of its columns, or its columns could not be held against other periods.
  const twoWay = TWO_WAY_TABLES.filter(
    ({ id, columns }) =>
      isYear && choices[id] !== LEFT_OUT && oneWay.some(({ tableId }) => tableId === columns.id),
  ).map((table) => {
    const lists = { rows: listOf(table.id, choices), columns: listOf(table.columns.id, choices) };
    return countTwoWay(table, lists, people, context);
  });
  return {
    ref,
    commissionerId,
    period: { label: period.label, kind: period.kind },
    policy,
    corrects,
    totals: UNIVERSES.map((universe) => issuedTotal(universe, people[universe].length, policy)),
    tables: [...oneWay, ...twoWay],
    summaries: [],
  };
}

function hasEnough({ needs }: TableDefinition, { counts }: CountedTable, policy: DisclosurePolicy): boolean {
  if (needs === null) return true;
  return needs.reduce((sum, category) => sum + (counts[category] ?? 0), 0) >= policy.minimumForMeans;
}

function listOf(tableId: string, choices: TableChoices): CodeList {
  const lists = codeListsOf(tableId);
  const chosen = lists.find(({ id }) => id === choices[tableId]) ?? lists[0];
  if (chosen === undefined) throw new Error(`${tableId} has no code list.`);
  return chosen;
}
