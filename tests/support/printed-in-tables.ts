import { ALL_UNIVERSES } from '../../src/domain/release/universes.js';
import { TABLES, TWO_WAY_TABLES } from '../../src/domain/release/tables/table-list.js';
import type { CodeList } from '../../src/domain/release/table-definition.js';
import type { Printed } from './attacker.js';
import type { ReadTable } from './read-tables.js';

/*
 * A page, a PDF and a spreadsheet name groups in words only. A reader who has the printed lists of groups knows from the
 * words which groups were meant.
 */

/** The counts of a release by the tables of one of its forms. */
export function printedInTables(tables: readonly ReadTable[]): readonly Printed[] {
  return tables.flatMap((table) => [...totalsIn(table), ...oneWayIn(table), ...twoWayIn(table)]);
}

function totalsIn({ caption, rows }: ReadTable): readonly Printed[] {
  if (caption !== 'Referrals counted') return [];
  return rows.map(([words = '', count = '']) => {
    const universe = ALL_UNIVERSES.find((each) => each.words === words);
    if (universe === undefined) throw new Error(`Nobody knows who “${words}” are.`);
    return { kind: 'total', table: '', id: universe.id, value: valueOf(count) };
  });
}

function oneWayIn({ caption, heads, rows }: ReadTable): readonly Printed[] {
  const table = TABLES.find(({ title }) => caption.startsWith(`${title}: `));
  if (table === undefined || heads[0] !== 'Group') return [];
  const cells = rows.filter(([words]) => words !== 'All');
  const list = listWith(
    table.codeLists,
    cells.map(([words = '']) => words.replace(/^of these, /, '')),
    'all',
  );
  return cells.map(([, count = ''], index) => {
    const id = list.cells[index]?.id ?? '';
    return { kind: 'cell', table: table.id, id, value: valueOf(count) };
  });
}

function twoWayIn({ caption, heads, rows }: ReadTable): readonly Printed[] {
  const table = TWO_WAY_TABLES.find(({ title }) => caption === title);
  if (table === undefined) return [];
  const columnWords = heads.slice(1, heads.indexOf('All'));
  const rowWords = rows.flatMap(([words = '']) => (words === 'All' ? [] : [words]));
  const columns = listWith(table.columns.codeLists, columnWords, 'all');
  const rowList = listWith(table.rows.codeLists, rowWords, 'some');
  const idOf = (list: CodeList, words: string): string =>
    list.cells.find((cell) => cell.words === words)?.id ?? 'all';
  return rows.flatMap(([words = '', ...counts]) =>
    [...columnWords, 'All'].flatMap((column, index) => {
      const id = `${idOf(rowList, words)}|${idOf(columns, column)}`;
      if (id === 'all|all') return [];
      const kind = words === 'All' ? 'column-total' : column === 'All' ? 'row-total' : 'cell';
      return [{ kind, table: table.id, id, value: valueOf(counts[index] ?? '') }];
    }),
  );
}

/** The list of groups that has these words, and no others where all are asked for. */
function listWith(lists: readonly CodeList[], words: readonly string[], which: 'all' | 'some'): CodeList {
  const found = lists.find(({ cells }) => {
    const own = cells.map((each) => each.words);
    return which === 'all' ? own.join('; ') === words.join('; ') : words.every((each) => own.includes(each));
  });
  if (found === undefined) throw new Error(`No list of groups has: ${words.join('; ')}.`);
  return found;
}

function valueOf(count: string): number | null {
  if (count === '*') return null;
  if (!/^\d+$/.test(count)) throw new Error(`Not a printed count: “${count}”.`);
  return Number(count);
}
