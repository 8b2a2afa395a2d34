import { parse } from 'csv-parse/sync';
import { difference, sumOf } from '../../src/domain/attack/system.js';
import type { IntegerSystem, Known, Sum, Unknown } from '../../src/domain/attack/system.js';
import { TABLES, TWO_WAY_TABLES } from '../../src/domain/release/tables/table-list.js';

/*
 * Somebody who knows the town: has the files of the releases, the printed rules and the printed lists of groups, and nothing
 * of the program that hides and attacks. Everything is worked out from the text of the files.
 */

/** One printed count of a file. */
export interface Printed {
  readonly table: string;
  readonly id: string;
  readonly kind: string;
  /** Null for a mark. */
  readonly value: number | null;
}

/** The counts of a release's rows. */
export function printedIn(csv: string): readonly Printed[] {
  const rows: string[][] = parse(csv, { bom: true });
  return rows
    .filter(([, kind]) => ['total', 'cell', 'row-total', 'column-total'].includes(kind ?? ''))
    .map(([, kind = '', table = '', id = '', , value = '']) => ({
      kind,
      table,
      id,
      value: value === '*' ? null : Number(value),
    }));
}

/** How a reader understands the numbers of a release. */
export interface Reading {
  readonly name: string;
  readonly printed: readonly Printed[];
  readonly mode: 'rounded' | 'exact';
}

const unknown = (name: string, table: string, category: string): Unknown => `${name} ${table} ${category}`;

/** Everything that one release says; its unknowns are the finest groups of every printed table. */
export function knownFrom({ name, printed, mode }: Reading): readonly Known[] {
  const meaning = (value: number | null): { low: number; high: number | null } => {
    if (value === null) return { low: 1, high: mode === 'rounded' ? 7 : null };
    if (mode === 'exact' || value === 0) return { low: value, high: value };
    return { low: Math.max(8, value - 2), high: value + 2 };
  };
  const known: Known[] = [];
  const totals = new Map<string, Unknown>();
  for (const { kind, id, value } of printed) {
    if (kind !== 'total') continue;
    totals.set(id, `${name} total ${id}`);
    known.push({ sum: sumOf([`${name} total ${id}`]), ...meaning(value) });
  }
  for (const table of new Set(printed.map((each) => each.table).filter((each) => each !== ''))) {
    const cells = printed.filter((each) => each.table === table);
    const groups = groupsOf(table, cells);
    for (const { id, value } of cells) {
      const categories = groups.get(id) ?? [];
      known.push({ sum: sumOf(categories.map((each) => unknown(name, table, each))), ...meaning(value) });
    }
    const everybody = categoriesOf(table).map((each) => unknown(name, table, each));
    const total = totals.get(universeOf(table));
    if (total !== undefined) known.push({ sum: difference(everybody, [total]), low: 0, high: 0 });
    const crossed = TWO_WAY_TABLES.find(({ id }) => id === table);
    if (crossed !== undefined && printed.some((each) => each.table === crossed.columns.id)) {
      for (const column of crossed.columns.categories) {
        const down = crossed.rows.categories.map((row) => unknown(name, table, `${row.id}|${column.id}`));
        known.push({
          sum: difference(down, [unknown(name, crossed.columns.id, column.id)]),
          low: 0,
          high: 0,
        });
      }
    }
  }
  const assessed = totals.get('assessed');
  if (assessed !== undefined && printed.some(({ table }) => table === 'first-assessment')) {
    const same = [unknown(name, 'first-assessment', 'assessed')];
    known.push({ sum: difference(same, [assessed]), low: 0, high: 0 });
  }
  return known;
}

/** A year is the sum of its quarters, but for so many people that were entered late. */
export function yearIsSum(year: Reading, quarters: readonly Reading[], late = 0): readonly Known[] {
  const tables = new Set(year.printed.map(({ table }) => table).filter((table) => table !== ''));
  const inAll = [...tables].filter((table) =>
    quarters.every(({ printed }) => printed.some((each) => each.table === table)),
  );
  const tied = inAll.flatMap((table) =>
    categoriesOf(table).map((category) => ({
      sum: difference(
        [unknown(year.name, table, category)],
        quarters.map(({ name }) => unknown(name, table, category)),
      ),
      low: -late,
      high: late,
    })),
  );
  const universes = year.printed.filter(({ kind }) => kind === 'total').map(({ id }) => id);
  const totals = universes.map((id) => ({
    sum: difference(
      [`${year.name} total ${id}`],
      quarters.map(({ name }) => `${name} total ${id}`),
    ),
    low: -late,
    high: late,
  }));
  return [...tied, ...totals];
}

/** The unknowns behind a printed cell. */
export function behind({ name, printed }: Reading, table: string, id: string): readonly Unknown[] {
  const cells = printed.filter((each) => each.table === table);
  return (groupsOf(table, cells).get(id) ?? []).map((category) => unknown(name, table, category));
}

/**
 * What somebody knows who compares two releases of the same people, where so many came late, left or were changed at most:
 * each group and each total can have moved by no more.
 */
export function movedByAtMost(newer: Reading, older: Reading, most: number): readonly Known[] {
  return [...movesBetween(newer, older).values()].map((sum) => ({ sum, low: -most, high: most }));
}

/** The change of every group, and of every total, by its name. */
export function movesBetween(newer: Reading, older: Reading): ReadonlyMap<string, Sum> {
  const tables = new Set(newer.printed.map(({ table }) => table).filter((table) => table !== ''));
  const both = [...tables].filter((table) => older.printed.some((each) => each.table === table));
  const groups = both.flatMap((table) =>
    categoriesOf(table).map((category) => {
      const sum = difference([unknown(newer.name, table, category)], [unknown(older.name, table, category)]);
      return [`${table} ${category}`, sum] as const;
    }),
  );
  const cells = both.flatMap((table) =>
    newer.printed
      .filter((each) => each.table === table)
      .map(({ id }) => {
        const now = behind(newer, table, id);
        const then = now.map((name) => name.replace(`${newer.name} `, `${older.name} `));
        return [`${table} ${id} as printed`, difference(now, then)] as const;
      }),
  );
  const totals = newer.printed
    .filter(({ kind }) => kind === 'total')
    .map(
      ({ id }) =>
        [`total ${id}`, difference([`${newer.name} total ${id}`], [`${older.name} total ${id}`])] as const,
    );
  return new Map([...groups, ...cells, ...totals]);
}

/** The system of some readings. */
export function systemFrom(known: readonly Known[]): IntegerSystem {
  return { known };
}

/** Which of the printed lists of groups a table was printed by: the one with these cells. */
function groupsOf(table: string, cells: readonly Printed[]): ReadonlyMap<string, readonly string[]> {
  const ids = cells.map(({ id }) => id);
  const crossed = TWO_WAY_TABLES.find(({ id }) => id === table);
  if (crossed === undefined) {
    const list = TABLES.find(({ id }) => id === table)?.codeLists.find(
      (each) => each.cells.map(({ id }) => id).join() === ids.join(),
    );
    return new Map(list?.cells.map(({ id, of }) => [id, of]));
  }
  const groups = new Map<string, readonly string[]>();
  const part = (
    name: string,
    side: {
      readonly categories: readonly { readonly id: string }[];
      readonly codeLists: (typeof TABLES)[number]['codeLists'];
    },
    printedNames: readonly string[],
  ): readonly string[] => {
    if (name === 'all') return side.categories.map(({ id }) => id);
    const list = side.codeLists.find((each) =>
      printedNames.every((one) => one === 'all' || each.cells.some(({ id }) => id === one)),
    );
    return list?.cells.find(({ id }) => id === name)?.of ?? [];
  };
  const rowNames = ids.map((id) => id.split('|')[0] ?? '');
  const columnNames = ids.map((id) => id.split('|')[1] ?? '');
  for (const id of ids) {
    const [row = '', column = ''] = id.split('|');
    const rows = part(row, crossed.rows, rowNames);
    const columns = part(column, crossed.columns, columnNames);
    groups.set(
      id,
      rows.flatMap((r) => columns.map((c) => `${r}|${c}`)),
    );
  }
  return groups;
}

function categoriesOf(table: string): readonly string[] {
  const crossed = TWO_WAY_TABLES.find(({ id }) => id === table);
  if (crossed !== undefined) {
    return crossed.rows.categories.flatMap((row) =>
      crossed.columns.categories.map((column) => `${row.id}|${column.id}`),
    );
  }
  return TABLES.find(({ id }) => id === table)?.categories.map(({ id }) => id) ?? [];
}

function universeOf(table: string): string {
  const found = TABLES.find(({ id }) => id === table) ?? TWO_WAY_TABLES.find(({ id }) => id === table);
  return found?.universe ?? '';
}
