import type { Known, Unknown } from '../../attack/system.js';
import { difference, sumOf } from '../../attack/system.js';
import { countOf } from '../issued.js';
import type { IssuedRelease, IssuedTable } from '../issued.js';
import { meaningOf, protectCount } from '../protected-count.js';
import type { HiddenBecause } from '../protected-count.js';
import type { DisclosurePolicy } from '../policy.js';
import { INCLUSIONS } from '../tables/table-list.js';
import type { PeopleOf } from '../tables/table-list.js';
import { atomsOfColumn } from './atoms.js';
import type { Atoms } from './atoms.js';
import { passedOver } from './passed-over.js';

/** The unknown of one atom of a table of a release. */
export function atomUnknown(release: IssuedRelease, tableId: string, atom: string): Unknown {
  return `${release.ref}/${tableId}/${atom}`;
}

/** The unknown of a universe's total. */
export function totalUnknown(release: IssuedRelease, universe: string): Unknown {
  return `${release.ref}/total/${universe}`;
}

/** The unknowns of some categories of a table. */
export function unknownsOf(
  release: IssuedRelease,
  atoms: Atoms,
  tableId: string,
  categories: readonly string[],
): readonly Unknown[] {
  return atoms.of(tableId, categories).map((atom) => atomUnknown(release, tableId, atom));
}

/** Everything that one release tells by itself. */
export function figuresOf(release: IssuedRelease, atoms: Atoms): readonly Known[] {
  return [
    ...release.totals.map(({ universe, count, hidden }) =>
      printed([totalUnknown(release, universe)], count, hidden, release.policy),
    ),
    ...release.tables.flatMap((table) => figuresOfTable(release, table, atoms)),
    ...inclusionsOf(release, atoms),
  ];
}

function figuresOfTable(release: IssuedRelease, table: IssuedTable, atoms: Atoms): readonly Known[] {
  const { tableId, universe } = table;
  const everybody = atoms.all(tableId).map((atom) => atomUnknown(release, tableId, atom));
  const known: Known[] = table.cells.map((cell) =>
    printed(
      unknownsOf(release, atoms, tableId, cell.of),
      countOf(table, cell),
      table.hidden[cell.id] ?? null,
      release.policy,
    ),
  );
  known.push(same(everybody, [totalUnknown(release, universe)]), ...marksPassedOver(release, table, atoms));
  const columns = release.tables.find((other) => other.tableId === table.columnsOf);
  if (columns === undefined) return known;
  for (const atom of atoms.all(columns.tableId)) {
    const categories = Object.keys(columns.counts).filter(
      (category) => atoms.of(columns.tableId, [category])[0] === atom,
    );
    const crossing = atomsOfColumn(atoms, table, categories).map((each) =>
      atomUnknown(release, tableId, each),
    );
    known.push(same(crossing, [atomUnknown(release, columns.tableId, atom)]));
  }
  return known;
}

/** The marks of the lists that were passed over. */
function marksPassedOver(release: IssuedRelease, table: IssuedTable, atoms: Atoms): readonly Known[] {
  return passedOver(table, release).flatMap((finer) =>
    finer.cells.flatMap((cell) => {
      const because = finer.hidden[cell.id];
      if (because === undefined) return [];
      const unknowns = unknownsOf(release, atoms, table.tableId, cell.of);
      return [printed(unknowns, countOf(table, cell), because, release.policy)];
    }),
  );
}

/** What a printed figure says: the count, the counts that round to it, or, of a mark, only that it is not 0. */
function printed(
  unknowns: readonly Unknown[],
  count: number,
  hidden: HiddenBecause | null,
  policy: DisclosurePolicy,
): Known {
  const sum = sumOf(unknowns);
  const figure = protectCount(count, policy, hidden);
  if (figure.kind === 'shown') return { sum, ...meaningOf(figure.value, policy) };
  // In a rounded release a mark stands for small counts only, and everybody may know it.
  return { sum, low: 1, high: policy.mode === 'rounded' ? policy.hidesBelow - 1 : null };
}

function inclusionsOf(release: IssuedRelease, atoms: Atoms): readonly Known[] {
  return INCLUSIONS.flatMap(({ smaller, larger, isEqual }) => {
    const [few, many] = [unknownsOfPeople(release, atoms, smaller), unknownsOfPeople(release, atoms, larger)];
    if (few === null || many === null) return [];
    return [{ sum: difference(many, few), low: 0, high: isEqual ? 0 : null }];
  });
}

function unknownsOfPeople(release: IssuedRelease, atoms: Atoms, people: PeopleOf): readonly Unknown[] | null {
  if ('universe' in people) {
    const total = release.totals.find(({ universe }) => universe === people.universe);
    return total === undefined ? null : [totalUnknown(release, people.universe)];
  }
  const table = release.tables.find(({ tableId }) => tableId === people.tableId);
  return table === undefined ? null : unknownsOf(release, atoms, people.tableId, people.categories);
}

function same(left: readonly Unknown[], right: readonly Unknown[]): Known {
  return { sum: difference(left, right), low: 0, high: 0 };
}
