import type { CohortKind } from '../cohort/cohorts.js';
import type { JudgeContext } from '../indicators/indicator.js';
import type { Course } from '../pathway/course.js';

/** The sets of referrals that a release counts. */
export const UNIVERSES = ['received', 'assessed', 'started', 'discharged'] as const;
export type UniverseId = (typeof UNIVERSES)[number];

export interface Universe {
  readonly id: UniverseId;
  readonly cohort: CohortKind;
  readonly words: string;
  /** Whether a referral of the cohort belongs to it. */
  readonly includes: (course: Course) => boolean;
}

/** One group of a table at its finest: a referral of the universe is in one and only one. */
export interface Category {
  readonly id: string;
  readonly words: string;
}

/** One printed count: a sum of categories. */
export interface CellDefinition {
  readonly id: string;
  readonly words: string;
  /** Ids of categories. */
  readonly of: readonly string[];
  /** Id of the cell of which this one is a part; null for one that is a part of the total. */
  readonly within: string | null;
}

/** One way in which a table may be printed. Cells that are within nothing make up the total, as do those of each branch. */
export interface CodeList {
  readonly id: string;
  readonly cells: readonly CellDefinition[];
}

/** A percentage that a table gives: categories of categories. It is computed from printed counts only. */
export interface ShareDefinition {
  readonly id: string;
  readonly title: string;
  readonly numerator: readonly string[];
  readonly denominator: readonly string[];
  /** Id with version of the rule that sorts people; printed. */
  readonly ruleId: string;
  /** Key under which a team's settings hold a target; null where there is none. */
  readonly targetKey: string | null;
}

/** A table of the fixed list. */
export interface TableDefinition {
  readonly id: string;
  readonly title: string;
  /** What it says, for somebody who does not work in health care. */
  readonly explanation: string;
  readonly universe: UniverseId;
  readonly categories: readonly Category[];
  readonly categoryOf: (course: Course, context: JudgeContext) => string;
  /** From the finest that may be printed to the coarsest; the first is used unless the attack asks for another. */
  readonly codeLists: readonly [CodeList, ...CodeList[]];
  readonly shares: readonly ShareDefinition[];
  /** Two-way tables and finer ones are printed of a whole year only. */
  readonly periods: 'every' | 'year';
  /** People of these categories must be at least as many as means need, or the table is left out; null where any will do. */
  readonly needs: readonly string[] | null;
}

/** A two-way table: a dimension of the universe by the categories of a one-way table that is printed beside it. */
export interface TwoWayDefinition {
  readonly id: string;
  readonly title: string;
  readonly explanation: string;
  readonly universe: UniverseId;
  readonly rows: Pick<TableDefinition, 'categories' | 'categoryOf' | 'codeLists'>;
  readonly columns: TableDefinition;
}
