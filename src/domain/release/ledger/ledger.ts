import { attack } from '../../attack/attack.js';
import type { AttackResult, Target } from '../../attack/attack.js';
import type { IntegerSystem, Known, Point } from '../../attack/system.js';
import { sumOf } from '../../attack/system.js';
import { countOf } from '../issued.js';
import type { IssuedRelease } from '../issued.js';
import { hiddenForItself } from '../protected-count.js';
import { atomsOf } from './atoms.js';
import type { Atoms } from './atoms.js';
import { figuresOf, totalUnknown, unknownsOf } from './figures.js';
import { followLink, linksOf, truthOf } from './links.js';
import type { Derived } from './links.js';
import { passedOver } from './passed-over.js';

/** What must not be found out. */
export type Secret =
  | {
      readonly kind: 'hidden-count';
      readonly ref: string;
      /** Null for the total of a universe. */
      readonly tableId: string | null;
      readonly cellId: string;
      readonly words: string;
    }
  | {
      readonly kind: 'difference';
      readonly newer: string;
      readonly older: readonly string[];
      readonly tableId: string | null;
      readonly of: readonly string[];
    };

/** Everything that the readers of a year's releases know, and what they must not find out. */
export interface Ledger {
  readonly system: IntegerSystem;
  readonly targets: readonly Target<Secret>[];
  readonly truth: Point;
}

/**
 * The ledger of the releases of one team and one financial year, of every commissioner: they talk. Withdrawn releases and
 * those that were corrected are in it, because they were read.
 *
 * The unknowns of a release are its own: late data change counts between two releases, and links say by how much.
 *
 * @source Statement of the attack: Handbook on Statistical Disclosure Control, online 2nd edition, chapters 4 and 5.
 */
export function ledgerOf(releases: readonly IssuedRelease[]): Ledger {
  const known: Known[] = [];
  const targets: Target<Secret>[] = [];
  const truths = new Map<string, number>();
  for (const commissionerId of new Set(releases.map((each) => each.commissionerId))) {
    const own = releases.filter((release) => release.commissionerId === commissionerId);
    const atoms = atomsOf(own);
    const truth = new Map(own.flatMap((release) => truthOf(release, atoms)));
    for (const release of own) {
      known.push(...figuresOf(release, atoms));
      targets.push(...hiddenCounts(release, atoms));
    }
    for (const link of linksOf(own)) {
      const followed = followLink(link, atoms, truth);
      known.push(...followed.known);
      targets.push(...followed.derived.flatMap(differenceTarget));
    }
    for (const [unknown, value] of truth) truths.set(unknown, value);
  }
  return { system: { known }, targets, truth: truths };
}

/** Attacks the releases of a year together. */
export function attackLedger({ system, targets, truth }: Ledger): AttackResult<Secret> {
  return attack(system, targets, truth);
}

/** Counts hidden for themselves, or merged for that. What is hidden for their sake needs no width of its own. */
function hiddenCounts(release: IssuedRelease, atoms: Atoms): readonly Target<Secret>[] {
  const { ref, policy } = release;
  const isSafe = (low: number, high: number): boolean => high - low >= policy.minimumWidth;
  const ofTotals = release.totals
    .filter(({ hidden }) => hidden === 'small')
    .map(({ universe }) => ({
      subject: { kind: 'hidden-count', ref, tableId: null, cellId: universe, words: universe } as const,
      sum: sumOf([totalUnknown(release, universe)]),
      isSafe,
    }));
  const ofTables = release.tables.flatMap((table) => {
    const { tableId } = table;
    const merged = passedOver(table, release).flatMap(({ cells }) =>
      cells.map((cell) => ({ ...cell, words: `${cell.words} (merged with others)` })),
    );
    return [...table.cells, ...merged]
      .filter((cell) => hiddenForItself(countOf(table, cell), policy) !== null)
      .map(({ id, words, of }) => ({
        subject: { kind: 'hidden-count', ref, tableId, cellId: id, words } as const,
        sum: sumOf(unknownsOf(release, atoms, tableId, of)),
        isSafe,
      }));
  });
  return [...ofTotals, ...ofTables];
}

/** A small difference must not be known to be small and nearly known, whichever way it goes. */
function differenceTarget({ link, tableId, of, sum, truth }: Derived): readonly Target<Secret>[] {
  const { newer, older } = link;
  const { hidesBelow, minimumWidth } = newer.policy;
  if (Math.abs(truth) >= hidesBelow) return [];
  const subject = {
    kind: 'difference',
    newer: newer.ref,
    older: older.map(({ ref }) => ref),
    tableId,
    of,
  } as const;
  const isSafe = (low: number, high: number): boolean => {
    const [least, most] = truth > 0 ? [low, high] : [-high, -low];
    return least < 1 || most >= hidesBelow || high - low >= minimumWidth;
  };
  return [{ subject, sum, isSafe }];
}
