import type { Known, Sum, Unknown } from '../../attack/system.js';
import { difference, valueAt } from '../../attack/system.js';
import type { Point } from '../../attack/system.js';
import type { IssuedRelease } from '../issued.js';
import type { Atoms } from './atoms.js';
import { atomUnknown, totalUnknown, unknownsOf } from './figures.js';

/** A release that holds the people of others: a year its quarters, a later release of a period the earlier one. */
export interface Link {
  readonly newer: IssuedRelease;
  readonly older: readonly IssuedRelease[];
  /** Whether the older ones hold everybody that the newer one does, but for late changes. */
  readonly isComplete: boolean;
}

/** What could be told from two releases together: how a count has changed, or what is left of a year. */
export interface Derived {
  readonly link: Link;
  /** Null for the total of a universe. */
  readonly tableId: string | null;
  /** Categories; the universe for a total. */
  readonly of: readonly string[];
  readonly sum: Sum;
  readonly truth: number;
}

/**
 * Links between the releases of one commissioner and one financial year, in the order of their issue. Whether a release was
 * corrected or withdrawn makes no difference: it was read. So each is held against every earlier one of its period, and a
 * year against its quarters in every version.
 */
export function linksOf(releases: readonly IssuedRelease[]): readonly Link[] {
  const versions = new Map<string, readonly IssuedRelease[]>();
  for (const release of releases) {
    const { label } = release.period;
    versions.set(label, [...(versions.get(label) ?? []), release]);
  }
  const again = [...versions.values()].flatMap((same) =>
    same.flatMap((newer, at) =>
      same.slice(0, at).map((older) => ({ newer, older: [older], isComplete: true })),
    ),
  );
  const quarters = [...versions.values()].filter(([first]) => first?.period.kind === 'quarter');
  if (quarters.length === 0) return again;
  const years = releases.filter(({ period }) => period.kind === 'year');
  const sums = years.flatMap((newer) =>
    oneOfEach(quarters).map((older) => ({ newer, older, isComplete: quarters.length === 4 })),
  );
  return [...again, ...sums];
}

/** Every choice of one from each list. @example oneOfEach([[1, 2], [3]]) -> [[1, 3], [2, 3]] */
function oneOfEach<Each>(lists: readonly (readonly Each[])[]): readonly (readonly Each[])[] {
  return lists.reduce<readonly (readonly Each[])[]>(
    (chosen, list) => chosen.flatMap((before) => list.map((each) => [...before, each])),
    [[]],
  );
}

/**
 * What an attacker makes of a link.
 *
 * He is granted to know where nothing changed late, so that hidden counts must be safe from somebody who takes it for
 * granted; where something did, he knows only about how much changes late.
 */
export function followLink(
  link: Link,
  atoms: Atoms,
  truth: Point,
): { readonly known: readonly Known[]; readonly derived: readonly Derived[] } {
  const groups = [...sharedTables(link).map((tableId) => tableChanges(link, tableId, atoms)), totals(link)];
  const known: Known[] = [];
  const derived: Derived[] = [];
  for (const group of groups) {
    const { isComplete } = group;
    const changes = group.changes.map((each) => ({ ...each, truth: valueAt(each.sum, truth) }));
    const late = changes.map((each) => (isComplete ? Math.abs(each.truth) : Math.max(0, -each.truth)));
    const most = Math.max(link.newer.policy.hidesBelow - 1, ...late);
    for (const change of changes) {
      const isStill = isComplete ? change.truth === 0 : change.truth >= 0;
      known.push({
        sum: change.sum,
        low: isStill ? 0 : -most,
        high: isComplete ? (isStill ? 0 : most) : null,
      });
      if (change.truth !== 0) derived.push({ ...change, link });
    }
  }
  return { known, derived };
}

type Change = Omit<Derived, 'link' | 'truth'>;

/** What changed in one table, or in the totals. */
interface Changes {
  readonly changes: readonly Change[];
  /** All of the older releases print it. */
  readonly isComplete: boolean;
}

function sharedTables({ newer, older }: Link): readonly string[] {
  const ids = newer.tables.map(({ tableId }) => tableId);
  return ids.filter((id) => older.some(({ tables }) => tables.some(({ tableId }) => tableId === id)));
}

/** Every set of categories that is printed in one of the releases, and every atom. */
function tableChanges({ newer, older, isComplete }: Link, tableId: string, atoms: Atoms): Changes {
  const holders = older.filter(({ tables }) => tables.some((table) => table.tableId === tableId));
  const tables = [newer, ...holders].flatMap((release) =>
    release.tables.filter((table) => table.tableId === tableId),
  );
  const sets = new Map<string, readonly string[]>();
  for (const { cells } of tables) for (const { of } of cells) sets.set(atoms.of(tableId, of).join(), of);
  for (const atom of atoms.all(tableId)) sets.set(atom, [atom]);
  const changes = [...sets.values()].map((of) => ({
    tableId,
    of,
    sum: difference(
      unknownsOf(newer, atoms, tableId, of),
      holders.flatMap((release) => unknownsOf(release, atoms, tableId, of)),
    ),
  }));
  return { changes, isComplete: isComplete && holders.length === older.length };
}

function totals({ newer, older, isComplete }: Link): Changes {
  const changes = newer.totals.flatMap(({ universe }) => {
    const holders = older.filter((release) => release.totals.some((total) => total.universe === universe));
    if (holders.length === 0) return [];
    const unknowns: readonly Unknown[] = holders.map((release) => totalUnknown(release, universe));
    return [{ tableId: null, of: [universe], sum: difference([totalUnknown(newer, universe)], unknowns) }];
  });
  return { changes, isComplete };
}

/** The true value of every unknown of a release. */
export function truthOf(release: IssuedRelease, atoms: Atoms): readonly (readonly [Unknown, number])[] {
  return [
    ...release.totals.map(({ universe, count }) => [totalUnknown(release, universe), count] as const),
    ...release.tables.flatMap(({ tableId, counts }) => {
      const sums = new Map<string, number>();
      for (const [category, count] of Object.entries(counts)) {
        const [atom] = atoms.of(tableId, [category]);
        if (atom !== undefined) sums.set(atom, (sums.get(atom) ?? 0) + count);
      }
      return [...sums].map(([atom, count]) => [atomUnknown(release, tableId, atom), count] as const);
    }),
  ];
}
