import type { TableDefinition, TwoWayDefinition } from '../table-definition.js';
import {
  COMPLETION,
  COMPLETION_OF_ASSESSED,
  EXERCISE_PLAN,
  FIRST_ASSESSMENT,
  PATHWAY,
  START,
} from './how-far-they-came.js';
import { RELEASED } from './how-they-changed.js';
import { AGE, DEPRIVATION, DIAGNOSIS, ETHNIC_GROUP, SEX, SOURCE } from './who-was-referred.js';

/** The fixed list of one-way tables, in the order in which they are printed. A release has no others. */
export const TABLES: readonly TableDefinition[] = [
  START,
  FIRST_ASSESSMENT,
  COMPLETION_OF_ASSESSED,
  COMPLETION,
  ...RELEASED.map(({ table }) => table),
  EXERCISE_PLAN,
  PATHWAY,
  SOURCE,
  DIAGNOSIS,
  AGE,
  DEPRIVATION,
  SEX,
  ETHNIC_GROUP,
];

/** By table, the list in which its percentage needs the fewest counts; tables whose first list is that one are not named. */
export const LISTS_FOR_FEW: Readonly<Record<string, string>> = {
  [START.id]: 'medium',
  ...Object.fromEntries(RELEASED.map(({ table }) => [table.id, 'coarse'])),
};

/** The fixed list of two-way tables; of a whole year only, and 4 x 4 at most. */
export const TWO_WAY_TABLES: readonly TwoWayDefinition[] = [
  {
    id: 'completion-by-deprivation',
    title: 'Who completed, by deprivation of the home address',
    explanation: 'Of those who started. Differences between small groups are mostly chance.',
    universe: 'started',
    rows: DEPRIVATION,
    columns: COMPLETION,
  },
  {
    id: 'completion-by-diagnosis',
    title: 'Who completed, by diagnosis',
    explanation: 'Of those who started. Differences between small groups are mostly chance.',
    universe: 'started',
    rows: DIAGNOSIS,
    columns: COMPLETION,
  },
];

/**
 * What follows from one table for another, by what the words mean: part of what an attacker knows. The tables of one
 * universe say nothing of each other beyond their total, and two-way tables that share a margin nothing beyond it.
 */
export interface Inclusion {
  readonly smaller: PeopleOf;
  readonly larger: PeopleOf;
  /** The two are the same people, not only some of them. */
  readonly isEqual: boolean;
}

/** A whole universe, or categories of a table. */
export type PeopleOf =
  | { readonly universe: 'received' | 'assessed' }
  | { readonly tableId: string; readonly categories: readonly string[] };

export const INCLUSIONS: readonly Inclusion[] = [
  {
    smaller: { universe: 'assessed' },
    larger: { tableId: FIRST_ASSESSMENT.id, categories: ['assessed'] },
    isEqual: true,
  },
  { smaller: { universe: 'assessed' }, larger: { universe: 'received' }, isEqual: false },
  {
    smaller: { tableId: COMPLETION_OF_ASSESSED.id, categories: ['yes'] },
    larger: { tableId: START.id, categories: ['within-90', 'later'] },
    isEqual: false,
  },
  {
    smaller: { tableId: PATHWAY.id, categories: ['within-28'] },
    larger: { tableId: START.id, categories: ['within-90', 'later'] },
    isEqual: false,
  },
];

/** A one-way table of the list. */
export function findTable(id: string): TableDefinition | undefined {
  return TABLES.find((table) => table.id === id);
}
