import type { Cohort, CohortKind } from '../cohort/cohorts.js';
import type { JudgeContext } from '../indicators/indicator.js';
import type { Course } from '../pathway/course.js';
import type { CountedCell, CountedTable } from './issued.js';
import type { CodeList, TableDefinition, TwoWayDefinition, UniverseId } from './table-definition.js';
import { ALL_UNIVERSES } from './universes.js';

/** The referrals of each universe. */
export type People = Readonly<Record<UniverseId, readonly Course[]>>;

/** Sorts cohorts into universes; registrations in error are in none. */
export function peopleOf(cohorts: Readonly<Record<CohortKind, Cohort>>): People {
  const entries = ALL_UNIVERSES.map(({ id, cohort, includes }) => [
    id,
    cohorts[cohort].courses.filter((course) => !course.isRegisteredInError && includes(course)),
  ]);
  return Object.fromEntries(entries) as People;
}

/** Counts a one-way table. */
export function countTable(
  table: TableDefinition,
  codeList: CodeList,
  people: People,
  context: JudgeContext,
): CountedTable {
  const counts = zeros(table.categories.map(({ id }) => id));
  for (const course of people[table.universe]) add(counts, table.categoryOf(course, context));
  return {
    tableId: table.id,
    universe: table.universe,
    codeListId: codeList.id,
    counts,
    cells: oneWayCells(codeList),
    columnsOf: null,
  };
}

/** The cells of a one-way table by a code list. */
export function oneWayCells(codeList: CodeList): readonly CountedCell[] {
  return codeList.cells.map((cell) => ({ ...cell, role: 'cell', row: null, column: null }));
}

/** Counts a two-way table, with its margins. */
export function countTwoWay(
  { id, universe, rows, columns }: TwoWayDefinition,
  lists: { readonly rows: CodeList; readonly columns: CodeList },
  people: People,
  context: JudgeContext,
): CountedTable {
  const counts = zeros(
    rows.categories.flatMap((row) => columns.categories.map((column) => crossed(row.id, column.id))),
  );
  for (const course of people[universe]) {
    add(counts, crossed(rows.categoryOf(course, context), columns.categoryOf(course, context)));
  }
  const everyRow = rows.categories.map((row) => row.id);
  const everyColumn = columns.categories.map((column) => column.id);
  const cells = lists.rows.cells.flatMap((row) => [
    ...lists.columns.cells.map((column) => twoWayCell(row, column, crossing(row.of, column.of))),
    twoWayCell(row, null, crossing(row.of, everyColumn)),
  ]);
  const totals = lists.columns.cells.map((column) => twoWayCell(null, column, crossing(everyRow, column.of)));
  return {
    tableId: id,
    universe,
    codeListId: lists.rows.id,
    counts,
    cells: [...cells, ...totals],
    columnsOf: columns.id,
  };
}

type Named = { readonly id: string; readonly words: string };

function twoWayCell(row: Named | null, column: Named | null, of: readonly string[]): CountedCell {
  return {
    id: crossed(row?.id ?? 'all', column?.id ?? 'all'),
    words: [row?.words, column?.words].filter((words) => words !== undefined).join(': '),
    of,
    within: null,
    role: row === null ? 'column-total' : column === null ? 'row-total' : 'cell',
    row: row?.id ?? null,
    column: column?.id ?? null,
  };
}

/** Id of a crossed category. @example crossed('fifth-1', 'yes') -> 'fifth-1|yes' */
export function crossed(row: string, column: string): string {
  return `${row}|${column}`;
}

function crossing(rows: readonly string[], columns: readonly string[]): readonly string[] {
  return rows.flatMap((row) => columns.map((column) => crossed(row, column)));
}

function zeros(ids: readonly string[]): Record<string, number> {
  return Object.fromEntries(ids.map((id) => [id, 0]));
}

function add(counts: Record<string, number>, category: string): void {
  const known = counts[category];
  if (known === undefined) throw new Error(`There is no category ${category}.`);
  counts[category] = known + 1;
}
