import { crossed } from '../count-tables.js';
import type { IssuedRelease, IssuedTable } from '../issued.js';
import { INCLUSIONS } from '../tables/table-list.js';
import { passedOver } from './passed-over.js';

/** The finest groups that any release of a year tells apart: categories that are always printed together are one. */
export interface Atoms {
  /** The atoms of some categories of a table; a category with nobody in the list is no atom. */
  readonly of: (tableId: string, categories: readonly string[]) => readonly string[];
  /** Every atom of a table. */
  readonly all: (tableId: string) => readonly string[];
}

/**
 * Works out the atoms of every table of some releases.
 *
 * Fewer unknowns make the attack quicker, and nothing is lost: figures that never tell two categories apart say nothing of
 * either alone.
 */
export function atomsOf(releases: readonly IssuedRelease[]): Atoms {
  const tables = new Map<string, IssuedTable[]>();
  const told = releases.flatMap((release) =>
    release.tables.flatMap((table) => [table, ...passedOver(table, release)]),
  );
  for (const table of told) {
    tables.set(table.tableId, [...(tables.get(table.tableId) ?? []), table]);
  }
  const atoms = new Map<string, ReadonlyMap<string, string>>();
  const oneWayFirst = [...tables].sort(([, [a]], [, [b]]) => rank(a) - rank(b));
  for (const [tableId, issued] of oneWayFirst) {
    const [first] = issued;
    const columns = first?.columnsOf ?? null;
    const byColumn = columns === null ? undefined : atoms.get(columns);
    atoms.set(tableId, atomsOfTable(tableId, issued, byColumn));
  }
  return {
    of: (tableId, categories) => {
      const known = atoms.get(tableId);
      return [...new Set(categories.flatMap((category) => known?.get(category) ?? []))];
    },
    all: (tableId) => [...new Set(atoms.get(tableId)?.values() ?? [])],
  };
}

function atomsOfTable(
  tableId: string,
  issued: readonly IssuedTable[],
  byColumn: ReadonlyMap<string, string> | undefined,
): ReadonlyMap<string, string> {
  const sets: ReadonlySet<string>[] = issued.flatMap((table) => table.cells.map((cell) => new Set(cell.of)));
  for (const { smaller, larger } of INCLUSIONS) {
    for (const people of [smaller, larger]) {
      if ('tableId' in people && people.tableId === tableId) sets.push(new Set(people.categories));
    }
  }
  const categories = [...new Set(issued.flatMap((table) => Object.keys(table.counts)))];
  const names = new Map<string, string>();
  const atoms = new Map<string, string>();
  for (const category of categories) {
    const column = byColumn?.get(category.slice(category.indexOf('|') + 1)) ?? '';
    const signature = sets.map((set) => (set.has(category) ? '1' : '0')).join('') + column;
    const name = names.get(signature) ?? category;
    names.set(signature, name);
    atoms.set(category, name);
  }
  return atoms;
}

/** Column atoms must be known before those of the tables that cross them. */
function rank(table: IssuedTable | undefined): number {
  return table?.columnsOf === null ? 0 : 1;
}

/** The atoms of a two-way table that lie in one column's categories. */
export function atomsOfColumn(
  atoms: Atoms,
  table: IssuedTable,
  columns: readonly string[],
): readonly string[] {
  const rows = new Set(Object.keys(table.counts).map((category) => category.slice(0, category.indexOf('|'))));
  return atoms.of(
    table.tableId,
    [...rows].flatMap((row) => columns.map((column) => crossed(row, column))),
  );
}
