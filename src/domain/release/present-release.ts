import { evidenceMark } from '../evidence/citation.js';
import { findFigureRule } from '../indicators/figure-rules.js';
import { wilsonInterval } from '../statistics/proportion.js';
import type { IssuedRelease, IssuedTable } from './issued.js';
import { countOf } from './issued.js';
import { protectCount } from './protected-count.js';
import type {
  ProtectedRelease,
  ProtectedShare,
  ProtectedSummary,
  ProtectedTable,
  ReleasedDefinition,
} from './protected-release.js';
import { printedCount } from './summaries.js';
import type { ShareDefinition, TableDefinition, TwoWayDefinition } from './table-definition.js';
import { findTable, TABLES, TWO_WAY_TABLES } from './tables/table-list.js';
import { universeOf } from './universes.js';

/** What a release says of itself beside its counts. */
export type ReleaseHead = Pick<
  ProtectedRelease,
  | 'number'
  | 'teamName'
  | 'commissionerId'
  | 'commissionerName'
  | 'period'
  | 'dataCut'
  | 'releasedOn'
  | 'settingsVersion'
  | 'agreement'
  | 'correction'
>;

/** Targets of a team by their key. */
export type Targets = Readonly<Record<string, { readonly percent: number; readonly source: string }>>;

/**
 * What leaves the team of a release: printed counts, and percentages of them. Nothing else of the kept counts gets through.
 */
export function presentRelease(
  issued: IssuedRelease,
  head: ReleaseHead,
  summaries: readonly ProtectedSummary[],
  targets: Targets,
): ProtectedRelease {
  const tables = issued.tables.map((table) => presentTable(table, issued, targets));
  return {
    format: 'tidemark-release@1',
    ...head,
    policy: issued.policy,
    totals: issued.totals.map(({ universe, count, hidden }) => ({
      universe,
      words: universeOf(universe).words,
      count: protectCount(count, issued.policy, hidden),
    })),
    tables,
    summaries,
    leftOut: leftOutOf(issued),
    definitions: definitionsOf(tables),
  };
}

function presentTable(table: IssuedTable, issued: IssuedRelease, targets: Targets): ProtectedTable {
  const definition = definitionOf(table.tableId);
  const shares = 'shares' in definition ? definition.shares : [];
  return {
    id: table.tableId,
    title: definition.title,
    explanation: definition.explanation,
    universe: table.universe,
    kind: table.columnsOf === null ? 'one-way' : 'two-way',
    cells: table.cells.map((cell) => ({
      id: cell.id,
      words: cell.words,
      count: protectCount(countOf(table, cell), issued.policy, table.hidden[cell.id] ?? null),
      within: cell.within,
      role: cell.role,
      row: cell.row,
      column: cell.column,
    })),
    shares: shares.map((share) => presentShare(share, table, issued, targets)),
  };
}

/**
 * A percentage from printed counts only: whole, of at least so many people, and only where the counts of those in it and of
 * those not in it are both shown.
 *
 * @source Interval: Wilson, as in `wilsonInterval`, of the printed counts.
 */
function presentShare(
  { id, title, ruleId, numerator, denominator, targetKey }: ShareDefinition,
  table: IssuedTable,
  issued: IssuedRelease,
  targets: Targets,
): ProtectedShare {
  const target = targetKey === null ? null : (targets[targetKey] ?? null);
  const share = { id, title, ruleId, target };
  const k = printedCount(table, numerator, issued);
  const rest = printedCount(
    table,
    denominator.filter((category) => !numerator.includes(category)),
    issued,
  );
  if (k === null || rest === null) {
    return { ...share, denominator: null, percent: null, interval: null, whyNot: 'hidden' };
  }
  const n = k + rest;
  const interval = wilsonInterval(k, n);
  if (n < issued.policy.minimumForPercent || interval === null) {
    return { ...share, denominator: n, percent: null, interval: null, whyNot: 'too-few' };
  }
  return {
    ...share,
    denominator: n,
    percent: wholePercent(k, n),
    interval: { low: Math.round(100 * interval.low), high: Math.round(100 * interval.high) },
    whyNot: null,
  };
}

/** To the nearest whole percent, halves up, without a division that could be inexact. @example wholePercent(1, 8) -> 13 */
function wholePercent(k: number, n: number): number {
  return Math.floor((200 * k + n) / (2 * n));
}

function definitionOf(tableId: string): TableDefinition | TwoWayDefinition {
  const found = findTable(tableId) ?? TWO_WAY_TABLES.find(({ id }) => id === tableId);
  if (found === undefined) throw new Error(`There is no table ${tableId}.`);
  return found;
}

function leftOutOf({ tables, period }: IssuedRelease): readonly string[] {
  const isYear = period.kind === 'year';
  const possible = [
    ...TABLES.filter(({ periods }) => isYear || periods === 'every'),
    ...(isYear ? TWO_WAY_TABLES : []),
  ];
  return possible.filter(({ id }) => !tables.some(({ tableId }) => tableId === id)).map(({ title }) => title);
}

function definitionsOf(tables: readonly ProtectedTable[]): readonly ReleasedDefinition[] {
  const rules = new Map<string, ReleasedDefinition>();
  for (const { id, ruleId } of tables.flatMap(({ shares }) => shares)) {
    const rule = findFigureRule(id);
    if (rule === undefined) throw new Error(`There is no rule ${id}.`);
    const { numerator, denominator, exclusions, source } = rule;
    const mark = evidenceMark(source.status);
    const words = mark === null ? source.text : `${source.text} (${mark})`;
    rules.set(ruleId, { ruleId, numerator, denominator, exclusions, source: words });
  }
  return [...rules.values()];
}
