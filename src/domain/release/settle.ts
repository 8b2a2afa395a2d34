import type { IssuedRelease } from './issued.js';
import { protectRelease } from './protect-release.js';
import type { CountedRelease, ProtectedDraft } from './protect-release.js';

/** How each table is printed: the id of a code list, or `left-out`. Tables that are not named have their finest. */
export type TableChoices = Readonly<Record<string, string>>;

/** In a choice: the table is not printed. */
export const LEFT_OUT = 'left-out';

const MOST_ROUNDS = 40;

/**
 * Takes up what the attack proposes, merging and leaving out, until it finds nothing more or only what no table can mend.
 *
 * @param count counts the release by some choices
 * @returns the last draft with the choices that made it
 */
export function settleRelease(
  count: (choices: TableChoices) => CountedRelease,
  earlier: readonly IssuedRelease[],
  choices: TableChoices,
): { readonly draft: ProtectedDraft; readonly choices: TableChoices } {
  let [chosen, draft] = [choices, protectRelease(count(choices), earlier)];
  for (let round = 0; round < MOST_ROUNDS && !draft.attack.isPassed; round += 1) {
    const proposed = proposedBy(draft);
    if (Object.keys(proposed).length === 0) break;
    chosen = { ...chosen, ...proposed };
    draft = protectRelease(count(chosen), earlier);
  }
  return { draft, choices: chosen };
}

/** The choices that a refused draft proposes. */
function proposedBy({ attack }: ProtectedDraft): TableChoices {
  return Object.fromEntries(
    attack.exposures.flatMap(({ remedy }) => {
      switch (remedy.kind) {
        case 'merge':
          return [[remedy.tableId, remedy.codeListId]];
        case 'leave-out':
          return [[remedy.tableId, LEFT_OUT]];
        case 'round-or-wait':
          return [];
      }
    }),
  );
}
