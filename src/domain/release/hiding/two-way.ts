import { componentsOf } from '../../attack/components.js';
import { extremeOf } from '../../attack/extreme.js';
import type { IntegerSystem, Known } from '../../attack/system.js';
import { sumOf } from '../../attack/system.js';
import { countOf } from '../issued.js';
import type { CountedCell, CountedTable } from '../issued.js';
import type { DisclosurePolicy } from '../policy.js';
import { hiddenForItself } from '../protected-count.js';
import type { Hidden } from './one-way.js';

/** Information that hiding a cell costs is its count and this much more, so that small ones are not all taken. */
const COST_OF_ANY = 10;
const MOST_STEPS = 200;

/**
 * Hides further cells of a two-way table until every cell hidden for itself has an interval that is wide enough: each time
 * the cell that gives the narrowest most width for the information it costs. Then what proved needless is shown again.
 *
 * Simple rules such as two hidden cells in every row and column do not protect; the bounds are worked out.
 */
export function hideTwoWay(table: CountedTable, policy: DisclosurePolicy, hidden: Hidden): void {
  const small = table.cells.filter((cell) => hiddenForItself(countOf(table, cell), policy) !== null);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const narrowest = narrowestOf(table, policy, hidden, small);
    if (narrowest === null) break;
    const next = bestHelp(table, policy, hidden, narrowest) ?? nextOfItsLines(table, hidden, narrowest.cell);
    if (next === null) return;
    hidden.set(next.id, 'protects-others');
  }
  showAgain(table, policy, hidden, small);
}

interface Narrow {
  readonly cell: CountedCell;
  readonly width: number;
}

/** The cell that is known best, of those known too well; null where none is. */
function narrowestOf(
  table: CountedTable,
  policy: DisclosurePolicy,
  hidden: Hidden,
  small: readonly CountedCell[],
): Narrow | null {
  let found: Narrow | null = null;
  for (const cell of small) {
    const width = widthOf(table, hidden, cell);
    if (width < policy.minimumWidth && (found === null || width < found.width)) found = { cell, width };
  }
  return found;
}

function bestHelp(
  table: CountedTable,
  { minimumWidth }: DisclosurePolicy,
  hidden: Hidden,
  { cell, width }: Narrow,
): CountedCell | null {
  let best: { readonly cell: CountedCell; readonly worth: number } | null = null;
  for (const candidate of table.cells) {
    if (candidate.role !== 'cell' || hidden.has(candidate.id)) continue;
    const count = countOf(table, candidate);
    if (count === 0) continue;
    const tried = new Map(hidden).set(candidate.id, 'protects-others');
    const gain = Math.min(minimumWidth, widthOf(table, tried, cell)) - width;
    const worth = gain / (count + COST_OF_ANY);
    if (gain > 0 && (best === null || worth > best.worth)) best = { cell: candidate, worth };
  }
  return best?.cell ?? null;
}

/** Where no single cell helps: the smallest of its row or column, then the smallest margin. */
function nextOfItsLines(table: CountedTable, hidden: Hidden, cell: CountedCell): CountedCell | null {
  const isFree = (other: CountedCell): boolean => !hidden.has(other.id) && countOf(table, other) > 0;
  const bySize = (a: CountedCell, b: CountedCell): number => countOf(table, a) - countOf(table, b);
  const free = table.cells.filter(isFree).sort(bySize);
  const inLine = free.find(
    (other) => other.role === 'cell' && (other.row === cell.row || other.column === cell.column),
  );
  return inLine ?? free.find((other) => other.role !== 'cell') ?? null;
}

function showAgain(
  table: CountedTable,
  policy: DisclosurePolicy,
  hidden: Hidden,
  small: readonly CountedCell[],
): void {
  const added = table.cells
    .filter((cell) => hidden.get(cell.id) === 'protects-others')
    .sort((a, b) => countOf(table, b) - countOf(table, a));
  for (const cell of added) {
    hidden.delete(cell.id);
    if (narrowestOf(table, policy, hidden, small) !== null) hidden.set(cell.id, 'protects-others');
  }
}

/** What the table tells by itself: its unknowns are its printed cells, its total is shown. */
function systemOf(table: CountedTable, hidden: Hidden): IntegerSystem {
  const interior = table.cells.filter(({ role }) => role === 'cell');
  const known: Known[] = table.cells.map((cell) => {
    const isHidden = hidden.has(cell.id);
    const count = countOf(table, cell);
    const sum = sumOf(interior.filter((other) => isIn(other, cell)).map(({ id }) => id));
    return { sum, low: isHidden ? 1 : count, high: isHidden ? null : count };
  });
  const total = interior.reduce((sum, cell) => sum + countOf(table, cell), 0);
  known.push({ sum: sumOf(interior.map(({ id }) => id)), low: total, high: total });
  return { known };
}

/** Whether an inner cell belongs to a cell or a margin. */
function isIn(inner: CountedCell, { row, column }: CountedCell): boolean {
  return (row === null || row === inner.row) && (column === null || column === inner.column);
}

function widthOf(table: CountedTable, hidden: Hidden, cell: CountedCell): number {
  const inner = table.cells.filter((other) => other.role === 'cell' && isIn(other, cell));
  const sum = sumOf(inner.map(({ id }) => id));
  const part = componentsOf(systemOf(table, hidden)).of(sum);
  const least = extremeOf(part, sum, 'minimize');
  const most = extremeOf(part, sum, 'maximize');
  if (most.kind === 'unbounded') return Infinity;
  return least.kind === 'found' && most.kind === 'found' ? most.value - least.value : 0;
}
