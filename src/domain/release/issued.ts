import type { DisclosurePolicy } from './policy.js';
import type { HiddenBecause } from './protected-count.js';
import type { UniverseId } from './table-definition.js';

/*
 * A release as the team keeps it: every count unprotected, beside what was hidden and why. It never leaves the team; from it
 * an attack can be run again.
 */

/** One printed place of a table. */
export interface CountedCell {
  readonly id: string;
  readonly words: string;
  /** Ids of the table's finest categories. */
  readonly of: readonly string[];
  readonly within: string | null;
  readonly role: 'cell' | 'row-total' | 'column-total';
  /** Of a two-way table, null where the cell is a total of the row, or the column. */
  readonly row: string | null;
  readonly column: string | null;
}

/** A table as counted. */
export interface CountedTable {
  readonly tableId: string;
  readonly universe: UniverseId;
  readonly codeListId: string;
  /** Referrals by finest category; a two-way table's are written `row|column`. */
  readonly counts: Readonly<Record<string, number>>;
  readonly cells: readonly CountedCell[];
  /** One-way table of the same universe whose categories are the columns; null for a one-way table. */
  readonly columnsOf: string | null;
}

/** A table with what is hidden in it. */
export interface IssuedTable extends CountedTable {
  /** By id of the cell; a cell that is not in it is shown. */
  readonly hidden: Readonly<Record<string, HiddenBecause>>;
}

/** How many a universe holds. */
export interface IssuedTotal {
  readonly universe: UniverseId;
  readonly count: number;
  readonly hidden: HiddenBecause | null;
}

/** One release with all its counts. */
export interface IssuedRelease {
  /** Its number, or `draft`. */
  readonly ref: string;
  readonly commissionerId: string;
  readonly period: { readonly label: string; readonly kind: 'quarter' | 'year' };
  readonly policy: DisclosurePolicy;
  /** The release that this one corrects. */
  readonly corrects: string | null;
  readonly totals: readonly IssuedTotal[];
  readonly tables: readonly IssuedTable[];
  /** Ids of the means and medians that were printed. */
  readonly summaries: readonly string[];
}

/** Referrals in a cell. */
export function countOf(table: CountedTable, cell: Pick<CountedCell, 'of'>): number {
  return cell.of.reduce((sum, category) => sum + (table.counts[category] ?? 0), 0);
}
