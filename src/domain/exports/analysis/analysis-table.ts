import type { ReferralFacts } from '../../cohort/referral-facts.js';
import type { Course } from '../../pathway/course.js';
import { column, optional } from '../column.js';
import type { ColumnKind, DescribedTable, RecordColumn } from '../record-table.js';
import type { DateForm, Masks } from './analysis-request.js';

/** A value as it leaves; null for nothing. */
export type AnalysisCell = string | number | null;

/** One column of a table for analysis, and what stands in it for an item. */
export interface AnalysisColumn<Item> extends RecordColumn {
  readonly valueOf: (item: Item, masks: Masks) => AnalysisCell;
}

/** A table for analysis: rows that are made of a referral. */
export interface AnalysisTable extends DescribedTable {
  readonly rowsOf: (course: Course, masks: Masks) => readonly (readonly AnalysisCell[])[];
}

/** Something that belongs to a referral. */
export interface OfReferral<Part> {
  readonly facts: ReferralFacts;
  readonly part: Part;
}

/** A column that is always filled. */
export function given<Item>(
  name: string,
  kind: ColumnKind,
  meaning: string,
  valueOf: AnalysisColumn<Item>['valueOf'],
): AnalysisColumn<Item> {
  return { ...column(name, kind, meaning), valueOf };
}

/** A column that may be empty. */
export function maybe<Item>(
  name: string,
  kind: ColumnKind,
  meaning: string,
  valueOf: AnalysisColumn<Item>['valueOf'],
): AnalysisColumn<Item> {
  return { ...optional(name, kind, meaning), valueOf };
}

/** What a column of dates holds. */
export function dateKind(dates: DateForm): ColumnKind {
  return dates === 'day' ? { type: 'date' } : { type: 'month' };
}

/** The column by which a row belongs to its referral. */
export function ofReferral<Part>(): AnalysisColumn<OfReferral<Part>> {
  return given('referral', PSEUDONYM, 'Pseudonym of the referral', ({ facts }, { pseudonym }) =>
    pseudonym('referral', facts.referralId),
  );
}

export const PSEUDONYM: ColumnKind = { type: 'pseudonym' };

/** A table of items, whose rows of one referral stand in the order of what they show: no order tells of a hidden day. */
export function tableOf<Item>(
  described: { readonly name: string; readonly holds: string; readonly key: readonly string[] },
  columns: readonly AnalysisColumn<Item>[],
  itemsOf: (course: Course) => readonly Item[],
): AnalysisTable {
  return {
    ...described,
    columns,
    rowsOf: (course, masks) =>
      itemsOf(course)
        .map((item) => columns.map(({ valueOf }) => valueOf(item, masks)))
        .map((row) => [row, JSON.stringify(row)] as const)
        .sort(([, one], [, other]) => (one < other ? -1 : one > other ? 1 : 0))
        .map(([row]) => row),
  };
}
