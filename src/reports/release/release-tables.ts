import type { Cell, Table, TextCell } from '../../documents/document-model.js';
import type { ProtectedCount } from '../../domain/release/protected-count.js';
import type {
  ProtectedRelease,
  ProtectedShare,
  ProtectedTable,
  ReleaseCorrection,
} from '../../domain/release/protected-release.js';
import { countText, HIDDEN_MARK, shareText, targetWords } from './release-words.js';

/** A one-way table with its total. */
export function oneWayTable(table: ProtectedTable, release: ProtectedRelease): Table {
  const total = release.totals.find(({ universe }) => universe === table.universe);
  return {
    caption: `${table.title}: ${total?.words.toLowerCase() ?? ''}`,
    columns: [
      { head: 'Group', kind: 'text' },
      { head: 'Referrals', kind: 'number' },
      { head: 'Table', kind: 'text', isForSheetsOnly: true },
      { head: 'Cell', kind: 'text', isForSheetsOnly: true },
    ],
    rows: [
      ...table.cells.map((cell) => [
        text(cell.within === null ? cell.words : `of these, ${cell.words}`),
        countCell(cell.count),
        text(table.id),
        text(cell.id),
      ]),
      ...(total === undefined ? [] : [[text('All'), countCell(total.count), text(table.id), text('all')]]),
    ],
  };
}

/** A two-way table with its margins. */
export function twoWayTable(table: ProtectedTable): Table {
  const columns = [...new Set(table.cells.flatMap(({ column }) => column ?? []))];
  const rows = [...new Set(table.cells.map(({ row }) => row))];
  const cellAt = (row: string | null, column: string | null): ProtectedTable['cells'][number] | undefined =>
    table.cells.find((cell) => cell.row === row && cell.column === column);
  const headOf = (column: string): string => cellAt(null, column)?.words ?? column;
  return {
    caption: table.title,
    columns: [
      { head: 'Group', kind: 'text' },
      ...columns.map((column) => ({ head: headOf(column), kind: 'number' }) as const),
      { head: 'All', kind: 'number' },
      { head: 'Table', kind: 'text', isForSheetsOnly: true },
      { head: 'Row', kind: 'text', isForSheetsOnly: true },
    ],
    rows: rows.map((row) => [
      text(row === null ? 'All' : (cellAt(row, null)?.words ?? row)),
      ...[...columns, null].map((column) => {
        const cell = cellAt(row, column);
        return cell === undefined ? text('') : countCell(cell.count);
      }),
      text(table.id),
      text(row ?? 'all'),
    ]),
  };
}

/** What a correction prints otherwise. */
export function changesTable({ ofNumber, changes }: ReleaseCorrection): Table {
  return {
    caption: `Counts that differ from release ${ofNumber}`,
    columns: [
      { head: 'Table', kind: 'text' },
      { head: 'Counted', kind: 'text' },
      { head: 'Was', kind: 'number' },
      { head: 'Is', kind: 'number' },
    ],
    rows: changes.map(({ tableTitle, words, before, after }) => [
      text(tableTitle),
      text(words),
      countCell(before),
      countCell(after),
    ]),
  };
}

/** How many each universe holds. */
export function totalsTable({ totals }: ProtectedRelease): Table {
  return {
    caption: 'Referrals counted',
    columns: [
      { head: 'Referrals', kind: 'text' },
      { head: 'Number', kind: 'number' },
      { head: 'Universe', kind: 'text', isForSheetsOnly: true },
    ],
    rows: totals.map(({ words, count, universe }) => [text(words), countCell(count), text(universe)]),
  };
}

/** Percentages with what they are held against. */
export function sharesTable(
  caption: string,
  release: ProtectedRelease,
  shares: readonly ProtectedShare[],
): Table {
  return {
    caption: `${caption}: of the printed counts, with 95 % intervals`,
    columns: [
      { head: 'Percentage', kind: 'text' },
      { head: 'Value', kind: 'text' },
      { head: 'Target', kind: 'text', isLeftOutWhenEmpty: true },
      { head: 'Rule', kind: 'text', isForSheetsOnly: true },
    ],
    rows: shares.map((share) => [
      text(share.title),
      text(shareText(share, release)),
      text(targetWords(share)),
      text(share.ruleId),
    ]),
  };
}

/** Means and medians. */
export function summariesTable({ summaries }: ProtectedRelease): Table {
  return {
    caption: 'Means and medians, of the people behind printed counts',
    columns: [
      { head: 'Figure', kind: 'text' },
      { head: 'Value', kind: 'number' },
      { head: 'Unit', kind: 'text' },
      { head: 'Spread', kind: 'text' },
      { head: 'People (printed)', kind: 'number' },
    ],
    rows: summaries.map(({ title, value, unit, sd, quartiles, n }) => [
      text(title),
      number(value),
      text(unit),
      text(
        quartiles === null
          ? `standard deviation ${sd ?? '-'}`
          : `quartiles ${quartiles.lower} and ${quartiles.upper}`,
      ),
      number(n),
    ]),
  };
}

/** A cell of words. */
export function text(words: string): TextCell {
  return { kind: 'text', text: words };
}

function number(value: number): Cell {
  return { kind: 'number', text: String(value), value, places: 0 };
}

/** A hidden count is a mark in every form: an empty cell would read as none. */
function countCell(count: ProtectedCount): Cell {
  return count.kind === 'hidden'
    ? { ...text(HIDDEN_MARK), isInPlaceOfNumber: true }
    : { ...number(count.value), text: countText(count) };
}
