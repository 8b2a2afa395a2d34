import type { DisclosurePolicy } from './policy.js';
import type { ProtectedCount } from './protected-count.js';
import type { UniverseId } from './table-definition.js';

/** A release as it leaves the team: protected counts, and what follows from them. Renderers accept nothing else. */
export interface ProtectedRelease {
  readonly format: 'tidemark-release@1';
  readonly number: number;
  readonly teamName: string;
  readonly commissionerId: string;
  readonly commissionerName: string;
  readonly period: {
    readonly label: string;
    readonly kind: 'quarter' | 'year';
    readonly firstDay: string;
    readonly lastDay: string;
  };
  /** Nothing dated later is counted. */
  readonly dataCut: string;
  readonly releasedOn: string;
  readonly policy: DisclosurePolicy;
  readonly settingsVersion: number;
  /** The agreement that names the recipient of an exact release; null in a rounded one. */
  readonly agreement: string | null;
  readonly correction: ReleaseCorrection | null;
  readonly totals: readonly ProtectedTotal[];
  readonly tables: readonly ProtectedTable[];
  readonly summaries: readonly ProtectedSummary[];
  /** Titles of tables of the fixed list that are not in it. */
  readonly leftOut: readonly string[];
  readonly definitions: readonly ReleasedDefinition[];
}

/** What a release corrects, why, and what it prints otherwise. */
export interface ReleaseCorrection {
  readonly ofNumber: number;
  readonly reason: string;
  readonly changes: readonly PrintedChange[];
}

/** A count that is shown in both releases and differs. */
export interface PrintedChange {
  readonly tableTitle: string;
  readonly words: string;
  readonly before: ProtectedCount;
  readonly after: ProtectedCount;
}

export interface ProtectedTotal {
  readonly universe: UniverseId;
  readonly words: string;
  readonly count: ProtectedCount;
}

export interface ProtectedTable {
  readonly id: string;
  readonly title: string;
  readonly explanation: string;
  readonly universe: UniverseId;
  readonly kind: 'one-way' | 'two-way';
  readonly cells: readonly ProtectedCell[];
  readonly shares: readonly ProtectedShare[];
}

export interface ProtectedCell {
  readonly id: string;
  readonly words: string;
  readonly count: ProtectedCount;
  readonly within: string | null;
  readonly role: 'cell' | 'row-total' | 'column-total';
  readonly row: string | null;
  readonly column: string | null;
}

/** A percentage of printed counts, 0 to 100, whole; it says nothing that they do not say. */
export interface ProtectedShare {
  readonly id: string;
  readonly title: string;
  readonly ruleId: string;
  readonly denominator: number | null;
  /** Null where a count is hidden or the denominator too small. */
  readonly percent: number | null;
  /** 95 % Wilson interval of the printed counts, whole percent. */
  readonly interval: { readonly low: number; readonly high: number } | null;
  readonly whyNot: 'hidden' | 'too-few' | null;
  readonly target: { readonly percent: number; readonly source: string } | null;
}

declare const CLEARED: unique symbol;

/**
 * A mean or median of enough people. It can be made by `clearedSummary` only, which sees to the floor, to overlapping
 * groups and to people who make up most of it.
 */
export type ProtectedSummary = {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  /** Sum of printed counts. */
  readonly n: number;
  readonly kind: 'mean-change' | 'median-wait';
  /** In the unit of the measure, whole. */
  readonly value: number;
  /** Standard deviation of the changes; null for a median. */
  readonly sd: number | null;
  /** Quartiles of the waits; null for a mean. */
  readonly quartiles: { readonly lower: number; readonly upper: number } | null;
} & { readonly [CLEARED]: true };

/** The rule behind a percentage, in words. */
export interface ReleasedDefinition {
  readonly ruleId: string;
  readonly numerator: string;
  readonly denominator: string;
  readonly exclusions: string | null;
  readonly source: string;
}
