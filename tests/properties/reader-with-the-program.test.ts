import { describe, expect, it } from 'vitest';
import { withDefaultLists } from '../../src/domain/release/default-lists.js';
import { issuedTotal } from '../../src/domain/release/hiding/hide.js';
import type { CountedTable, IssuedTable } from '../../src/domain/release/issued.js';
import { countOf } from '../../src/domain/release/issued.js';
import { DEFAULT_DISCLOSURE, policyOf } from '../../src/domain/release/policy.js';
import { protectCount } from '../../src/domain/release/protected-count.js';
import { protectRelease } from '../../src/domain/release/protect-release.js';
import type { CodeList, TableDefinition } from '../../src/domain/release/table-definition.js';
import { findTable } from '../../src/domain/release/tables/table-list.js';

const POLICY = policyOf(DEFAULT_DISCLOSURE, 'rounded');
type Counts = Readonly<Record<string, number>>;

/** Every way in which so many people can be in the categories. */
function* waysOf(total: number, categories: readonly string[]): Generator<Counts> {
  const [first = '', ...others] = categories;
  if (others.length === 0) {
    yield { [first]: total };
    return;
  }
  for (let count = 0; count <= total; count += 1) {
    for (const rest of waysOf(total - count, others)) yield { [first]: count, ...rest };
  }
}

function tableBy({ id, universe, categories }: TableDefinition, list: CodeList, some: Counts): CountedTable {
  const counts = Object.fromEntries(categories.map((category) => [category.id, some[category.id] ?? 0]));
  const cells = list.cells.map((cell) => ({ ...cell, role: 'cell' as const, row: null, column: null }));
  return { tableId: id, universe, codeListId: list.id, counts, cells, columnsOf: null };
}

/** What is printed of one table with its total; null where the release is refused. */
function printedOf(table: TableDefinition, counts: Counts, total: number): string | null {
  const totals = [issuedTotal(table.universe, total, POLICY)];
  const chosen = withDefaultLists(totals, POLICY, {})[table.id];
  const list = table.codeLists.find(({ id }) => id === chosen) ?? table.codeLists[0];
  const { release, attack } = protectRelease(
    {
      ref: '1',
      commissionerId: 'commissioner-1',
      period: { label: '2026-27-Q1', kind: 'quarter' },
      policy: POLICY,
      corrects: null,
      totals,
      tables: [tableBy(table, list, counts)],
      summaries: [],
    },
    [],
  );
  if (!attack.isPassed) return null;
  const shown = (count: number, because: IssuedTable['hidden'][string] | undefined): number | '*' => {
    const figure = protectCount(count, POLICY, because ?? null);
    return figure.kind === 'hidden' ? '*' : figure.value;
  };
  const figures = release.tables.flatMap((issued) =>
    issued.cells.map((cell) => shown(countOf(issued, cell), issued.hidden[cell.id])),
  );
  return JSON.stringify([list.id, figures, shown(total, undefined)]);
}

describe('a reader who has the program too, and tries it on every set of counts there can be', () => {
  it.each([
    { tableId: 'start', categories: ['within-90', 'later', 'left', 'not-by-90'] },
    { tableId: 'change.cat-total', categories: ['reached', 'little', 'worse', 'no-pair'] },
    { tableId: 'completion', categories: ['yes', 'no', 'open'] },
  ])(
    'comes no nearer than the least width to a small group of a rounded table, printed or merged: $tableId',
    ({ tableId, categories }) => {
      const table = findTable(tableId);
      if (table === undefined) throw new Error(`There is no table ${tableId}.`);
      const alike = new Map<string, Counts[]>();
      // All of them are printed as 25.
      for (let total = 23; total <= 27; total += 1) {
        for (const counts of waysOf(total, categories)) {
          const printed = printedOf(table, counts, total);
          if (printed !== null) alike.set(printed, [...(alike.get(printed) ?? []), counts]);
        }
      }
      const groups = new Map(
        table.codeLists.flatMap(({ cells }) => cells.map((cell) => [cell.of.join(), cell.of])),
      );
      let small = 0;
      for (const [printed, ways] of alike) {
        for (const of of groups.values()) {
          const values = ways.map((counts) => of.reduce((sum, each) => sum + (counts[each] ?? 0), 0));
          if (!values.some((value) => value > 0 && value < POLICY.hidesBelow)) continue;
          small += 1;
          expect(
            Math.max(...values) - Math.min(...values),
            `${printed}: ${of.join()}`,
          ).toBeGreaterThanOrEqual(POLICY.minimumWidth);
        }
      }
      expect(small).toBeGreaterThan(10);
    },
  );
});
