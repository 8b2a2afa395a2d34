import type { AttackResult, Found } from '../attack/attack.js';
import type { Exposure } from './exposure.js';
import { exposureOf } from './exposure.js';
import { hideIn, withHidden } from './hiding/hide.js';
import { smallestShown } from './hiding/one-way.js';
import { countOf } from './issued.js';
import type { CountedTable, IssuedRelease, IssuedTable } from './issued.js';
import { attackLedger, ledgerOf } from './ledger/ledger.js';
import type { Secret } from './ledger/ledger.js';

/** A release before anything is hidden in it. */
export type CountedRelease = Omit<IssuedRelease, 'tables'> & { readonly tables: readonly CountedTable[] };

/** The result of the attack as it is kept with a release. */
export interface AttackReport {
  readonly isPassed: boolean;
  /** Figures that must not be found out: hidden counts and small differences. */
  readonly targets: number;
  /** Releases attacked together, this one among them. */
  readonly releases: readonly string[];
  readonly exposures: readonly Exposure[];
  /** Why nothing could be concluded; null where the attack came to an end. */
  readonly trouble: string | null;
}

/** A release with what is hidden in it, attacked. */
export interface ProtectedDraft {
  readonly release: IssuedRelease;
  readonly attack: AttackReport;
}

/** Each step hides one more cell. */
const MOST_STEPS = 60;

/**
 * Hides what a release must not show, and attacks it together with everything that was released of the same team and
 * financial year.
 *
 * In an exact release cells go on being hidden while the attack finds something that this could mend. What remains is for
 * the lead: categories to merge, a table to leave out, or another mode.
 *
 * @param earlier every earlier release of the team and year, of every commissioner
 */
export function protectRelease(counted: CountedRelease, earlier: readonly IssuedRelease[]): ProtectedDraft {
  let release: IssuedRelease = {
    ...counted,
    tables: counted.tables.map((table) => hideIn(table, counted.policy)),
  };
  for (let step = 0; ; step += 1) {
    const result = attackLedger(ledgerOf([...earlier, release]));
    const mended = step < MOST_STEPS && result.kind === 'attacked' ? mendedBy(release, result.found) : null;
    if (mended === null) return { release, attack: reportOf(result, release, earlier) };
    release = mended;
  }
}

/** What an attack came to. */
export function reportOf(
  result: AttackResult<Secret>,
  release: IssuedRelease,
  earlier: readonly IssuedRelease[],
): AttackReport {
  const releases = [...earlier.map(({ ref }) => ref), release.ref];
  switch (result.kind) {
    case 'attacked': {
      const exposures = result.found.filter(({ isSafe }) => !isSafe).map((each) => exposureOf(each, release));
      return {
        isPassed: exposures.length === 0,
        targets: result.found.length,
        releases,
        exposures,
        trouble: null,
      };
    }
    case 'truth-outside':
      return failed(
        releases,
        'The counts do not fit the printed figures: the release was not built rightly.',
      );
    case 'solver-trouble':
      return failed(releases, `The attack came to no end (${result.status}): nothing is released unchecked.`);
  }
}

function failed(releases: readonly string[], trouble: string): AttackReport {
  return { isPassed: false, targets: 0, releases, exposures: [], trouble };
}

/** One more cell hidden in each exact table that the attack got into; null where nothing can be hidden. */
function mendedBy(release: IssuedRelease, found: readonly Found<Secret>[]): IssuedRelease | null {
  if (release.policy.mode !== 'exact') return null;
  const open = found.filter(({ isSafe }) => !isSafe).map(({ subject }) => subject);
  let isMended = false;
  const tables = release.tables.map((table) => {
    const secrets = open.filter(({ tableId }) => tableId === table.tableId);
    if (secrets.length === 0) return table;
    const next = nextToHide(table, secrets);
    if (next === null) return table;
    isMended = true;
    const hidden = new Map(Object.entries(table.hidden)).set(next, 'protects-others');
    return withHidden(table, hidden);
  });
  return isMended ? { ...release, tables } : null;
}

/** The very cell whose difference shows, else the smallest that is shown. */
function nextToHide(table: IssuedTable, secrets: readonly Secret[]): string | null {
  const hidden = new Map(Object.entries(table.hidden));
  for (const secret of secrets) {
    if (secret.kind !== 'difference') continue;
    const of = new Set(secret.of);
    const cell = table.cells.find(
      (each) => each.of.some((category) => of.has(category)) && !hidden.has(each.id),
    );
    if (cell !== undefined && countOf(table, cell) > 0) return cell.id;
  }
  const inner = table.cells.filter(({ role }) => role === 'cell');
  return (smallestShown(table, inner, hidden) ?? smallestShown(table, table.cells, hidden))?.id ?? null;
}
