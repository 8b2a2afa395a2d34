import type { Found } from '../attack/attack.js';
import type { IssuedRelease } from './issued.js';
import type { Secret } from './ledger/ledger.js';
import { findTable, TWO_WAY_TABLES } from './tables/table-list.js';
import type { TableDefinition } from './table-definition.js';

/** One thing that the attack found out, and what mends it. */
export interface Exposure {
  /** Null for the total of a universe. */
  readonly tableId: string | null;
  readonly tableTitle: string;
  /** Which figures, in words. */
  readonly figures: string;
  /** What a reader could work out: from `low` to `high` people. Null where nothing limits it. */
  readonly low: number;
  readonly high: number | null;
  readonly kind: Secret['kind'];
  readonly remedy: Remedy;
}

/** What would keep it hidden. */
export type Remedy =
  | { readonly kind: 'merge'; readonly tableId: string; readonly codeListId: string; readonly words: string }
  | { readonly kind: 'leave-out'; readonly tableId: string; readonly words: string }
  | { readonly kind: 'round-or-wait'; readonly words: string };

const ROUND_OR_WAIT = 'Make it a rounded release, or wait until more has changed.';
const MEND_OR_WAIT =
  'Mend whatever else is named here. If nothing is, wait until more has changed, or leave this period unreleased.';

/** What an attack found out, in words, with its remedy in the draft. */
export function exposureOf(found: Found<Secret>, draft: IssuedRelease): Exposure {
  const { subject, low, high } = found;
  const { tableId } = subject;
  return {
    tableId,
    tableTitle: tableId === null ? 'Totals' : titleOf(tableId),
    figures: figuresIn(subject, draft),
    low,
    high: Number.isFinite(high) ? high : null,
    kind: subject.kind,
    remedy: remedyOf(tableId, draft),
  };
}

/** The title of a table of the fixed list. */
export function titleOf(tableId: string): string {
  return definitionOf(tableId)?.title ?? tableId;
}

/**
 * The next coarser code list of a table in a draft, or to leave the table out.
 *
 * A table that is not in the draft was given away by others of the same people, through their total: the one with most cells
 * tells most of it.
 */
function remedyOf(exposedId: string | null, draft: IssuedRelease): Remedy {
  const tableId = isIn(draft, exposedId) ? exposedId : largestBeside(exposedId, draft);
  if (tableId === null) {
    const { mode } = draft.policy;
    return { kind: 'round-or-wait', words: mode === 'exact' ? ROUND_OR_WAIT : MEND_OR_WAIT };
  }
  const coarser = coarserList(tableId, draft);
  if (coarser === null) {
    return { kind: 'leave-out', tableId, words: `Leave out the table “${titleOf(tableId)}”.` };
  }
  const merged = coarser.cells.filter(({ of }) => of.length > 1).map(({ words }) => `“${words}”`);
  return {
    kind: 'merge',
    tableId,
    codeListId: coarser.id,
    words: `Merge categories of “${titleOf(tableId)}” into ${merged.join(' and ')}.`,
  };
}

function isIn({ tables }: IssuedRelease, tableId: string | null): boolean {
  return tables.some((table) => table.tableId === tableId);
}

/** The table with most cells of the same people as one that is not in the draft; null where there is none. */
function largestBeside(tableId: string | null, { tables }: IssuedRelease): string | null {
  const universe = tableId === null ? undefined : definitionOf(tableId)?.universe;
  const beside = tables.filter((table) => table.universe === universe);
  return beside.sort((a, b) => b.cells.length - a.cells.length)[0]?.tableId ?? null;
}

function definitionOf(tableId: string): { readonly title: string; readonly universe: string } | undefined {
  return findTable(tableId) ?? TWO_WAY_TABLES.find(({ id }) => id === tableId);
}

function coarserList(tableId: string, draft: IssuedRelease): TableDefinition['codeLists'][number] | null {
  const table = draft.tables.find((each) => each.tableId === tableId);
  const lists = codeListsOf(tableId);
  const at = lists.findIndex(({ id }) => id === table?.codeListId);
  return at < 0 ? null : (lists[at + 1] ?? null);
}

/** The code lists of a table, from fine to coarse; of a two-way table those of its rows. */
export function codeListsOf(tableId: string): TableDefinition['codeLists'][number][] {
  const twoWay = TWO_WAY_TABLES.find(({ id }) => id === tableId);
  return [...(findTable(tableId)?.codeLists ?? twoWay?.rows.codeLists ?? [])];
}

function figuresIn(subject: Secret, draft: IssuedRelease): string {
  if (subject.kind === 'hidden-count') {
    const of = subject.ref === draft.ref ? 'this release' : `release ${subject.ref}`;
    return `${subject.words}, hidden in ${of}`;
  }
  const older = subject.older.filter((ref) => ref !== draft.ref);
  const others = subject.newer === draft.ref ? older : [subject.newer, ...older];
  const table = draft.tables.find(({ tableId }) => tableId === subject.tableId);
  const cell = table?.cells.find(({ of }) => of.join() === subject.of.join());
  const words = cell?.words ?? subject.of.join(', ');
  return `${words}: this release beside ${others.length === 1 ? 'release' : 'releases'} ${others.join(', ')}`;
}
