import type { Category, CellDefinition, CodeList } from './table-definition.js';

/** Groups of a code list: an id, words, and the categories that it gathers. */
type Group = readonly [id: string, words: string, ...of: string[]];

/** A code list in which every category is a cell of its own. */
export function asTheyAre(categories: readonly Category[]): CodeList {
  return {
    id: 'fine',
    cells: categories.map(({ id, words }) => ({ id, words, of: [id], within: null })),
  };
}

/**
 * A code list of gathered categories.
 *
 * @example gathered('merged', [['copd', 'COPD', 'copd'], ['other', 'other diagnoses', 'asthma', 'lung-cancer']])
 */
export function gathered(id: string, groups: readonly Group[]): CodeList {
  return { id, cells: groups.map((group) => cell(group, null)) };
}

/** A code list in which some cells are parts of others. */
export function tree(
  id: string,
  branches: readonly { readonly group: Group; readonly parts: readonly Group[] }[],
): CodeList {
  return {
    id,
    cells: branches.flatMap(({ group, parts }) => [
      cell(group, null),
      ...parts.map((part) => cell(part, group[0])),
    ]),
  };
}

function cell([id, words, ...of]: Group, within: string | null): CellDefinition {
  return { id, words, of, within };
}
