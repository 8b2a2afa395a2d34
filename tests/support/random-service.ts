import type { CountedRelease } from '../../src/domain/release/protect-release.js';
import { crossed } from '../../src/domain/release/count-tables.js';
import type { CountedCell, CountedTable, IssuedTotal } from '../../src/domain/release/issued.js';
import { DEFAULT_DISCLOSURE, policyOf } from '../../src/domain/release/policy.js';
import type { ReleaseMode } from '../../src/domain/release/policy.js';
import { issuedTotal } from '../../src/domain/release/hiding/hide.js';
import { TABLES, TWO_WAY_TABLES } from '../../src/domain/release/tables/table-list.js';
import type { TableDefinition, UniverseId } from '../../src/domain/release/table-definition.js';
import { UNIVERSES } from '../../src/domain/release/table-definition.js';

/** Numbers from 0 to 1, the same for a seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Everybody of an invented service in one quarter: by universe, for each person the category in each table. */
export type Quarter = Readonly<Record<UniverseId, readonly Readonly<Record<string, string>>[]>>;

/**
 * People of an invented service in one quarter. Categories fall unevenly, the last ones rarely, as in life. What follows
 * from one table for another holds: who is assessed, and who completes or starts early has started.
 */
export function randomQuarter(random: () => number, received: number): Quarter {
  const person = (universe: UniverseId): Record<string, string> =>
    Object.fromEntries(tablesOf(universe).map((table) => [table.id, pick(table, random)]));
  const people = (universe: UniverseId, count: number): Record<string, string>[] =>
    Array.from({ length: count }, () => person(universe));
  const all = people('received', received);
  const started = (each: Record<string, string>): boolean =>
    ['within-90', 'later'].includes(each['start'] ?? '');
  const assessed: Record<string, string>[] = [];
  for (const each of all) {
    if (each['pathway'] === 'within-28') each['start'] = 'within-90';
    if (each['first-assessment'] !== 'assessed') continue;
    const also = person('assessed');
    if (also['completion-of-assessed'] === 'yes' && !started(each)) also['completion-of-assessed'] = 'no';
    assessed.push(also);
  }
  return {
    received: all,
    assessed,
    started: people('started', Math.round(received * (0.5 + 0.2 * random()))).map((each) => ({
      ...each,
      deprivation: pick(find('deprivation'), random),
      diagnosis: pick(find('diagnosis'), random),
    })),
    discharged: people('discharged', Math.round(received * (0.4 + 0.2 * random()))),
  };
}

/** The tables of quarters, counted. @param lists code lists by table; `left-out` leaves it out */
export function countedRelease(
  quarters: readonly Quarter[],
  about: {
    readonly ref: string;
    readonly mode: ReleaseMode;
    readonly period: CountedRelease['period'];
    readonly corrects?: string;
    readonly commissionerId?: string;
  },
  lists: Readonly<Record<string, string>> = {},
): CountedRelease {
  const policy = policyOf(DEFAULT_DISCLOSURE, about.mode);
  const peopleOf = (universe: UniverseId): readonly Readonly<Record<string, string>>[] =>
    quarters.flatMap((quarter) => quarter[universe]);
  const isYear = about.period.kind === 'year';
  const oneWay = TABLES.filter(
    (table) => (isYear || table.periods === 'every') && lists[table.id] !== 'left-out',
  )
    .map((table) => count(table, lists[table.id], peopleOf(table.universe)))
    .filter((table) => {
      const needs = TABLES.find(({ id }) => id === table.tableId)?.needs ?? null;
      return needs === null || needs.reduce((sum, id) => sum + (table.counts[id] ?? 0), 0) >= 10;
    });
  const twoWay = TWO_WAY_TABLES.filter(
    ({ id, columns }) =>
      isYear && lists[id] !== 'left-out' && oneWay.some(({ tableId }) => tableId === columns.id),
  ).map((table) => {
    const rowList = table.rows.codeLists.find(({ id }) => id === lists[table.id]) ?? table.rows.codeLists[0];
    return countCrossed(table.id, rowList, table.rows, table.columns, peopleOf(table.universe));
  });
  const totals: readonly IssuedTotal[] = UNIVERSES.map((universe) =>
    issuedTotal(universe, peopleOf(universe).length, policy),
  );
  return {
    ref: about.ref,
    commissionerId: about.commissionerId ?? 'commissioner-1',
    period: about.period,
    policy,
    corrects: about.corrects ?? null,
    totals,
    tables: [...oneWay, ...twoWay],
    summaries: [],
  };
}

function count(
  table: TableDefinition,
  list: string | undefined,
  people: readonly Readonly<Record<string, string>>[],
): CountedTable {
  const counts = Object.fromEntries(table.categories.map(({ id }) => [id, 0]));
  for (const person of people) {
    const category = person[table.id] ?? '';
    counts[category] = (counts[category] ?? 0) + 1;
  }
  const codeList = table.codeLists.find(({ id }) => id === list) ?? table.codeLists[0];
  return {
    tableId: table.id,
    universe: table.universe,
    codeListId: codeList.id,
    counts,
    cells: codeList.cells.map((cell) => ({ ...cell, role: 'cell', row: null, column: null })),
    columnsOf: null,
  };
}

function countCrossed(
  tableId: string,
  rowList: TableDefinition['codeLists'][number],
  rows: Pick<TableDefinition, 'categories'>,
  columns: TableDefinition,
  people: readonly Readonly<Record<string, string>>[],
): CountedTable {
  const rowTable = tableId.replace('completion-by-', '');
  const counts: Record<string, number> = {};
  for (const row of rows.categories)
    for (const column of columns.categories) counts[crossed(row.id, column.id)] = 0;
  for (const person of people) {
    const id = crossed(person[rowTable] ?? '', person[columns.id] ?? '');
    counts[id] = (counts[id] ?? 0) + 1;
  }
  const cells: CountedCell[] = [];
  const add = (
    row: Pick<CountedCell, 'id' | 'words' | 'of'> | null,
    column: Pick<CountedCell, 'id' | 'words' | 'of'> | null,
  ): void => {
    const rowIds = row?.of ?? rows.categories.map(({ id }) => id);
    const columnIds = column?.of ?? columns.categories.map(({ id }) => id);
    cells.push({
      id: crossed(row?.id ?? 'all', column?.id ?? 'all'),
      words: [row?.words, column?.words].filter((words) => words !== undefined).join(': '),
      of: rowIds.flatMap((r) => columnIds.map((c) => crossed(r, c))),
      within: null,
      role: row === null ? 'column-total' : column === null ? 'row-total' : 'cell',
      row: row?.id ?? null,
      column: column?.id ?? null,
    });
  };
  for (const row of rowList.cells) {
    for (const column of columns.codeLists[0].cells) add(row, column);
    add(row, null);
  }
  for (const column of columns.codeLists[0].cells) add(null, column);
  return { tableId, universe: 'started', codeListId: rowList.id, counts, cells, columnsOf: columns.id };
}

function tablesOf(universe: UniverseId): readonly TableDefinition[] {
  return TABLES.filter((table) => table.universe === universe);
}

function find(id: string): TableDefinition {
  const table = TABLES.find((each) => each.id === id);
  if (table === undefined) throw new Error(`There is no table ${id}.`);
  return table;
}

function pick(table: TableDefinition, random: () => number): string {
  const ids = table.categories.map(({ id }) => id);
  const at = Math.floor(ids.length * random() ** 1.6);
  return ids[at] ?? '';
}
