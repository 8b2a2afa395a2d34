import type { Findings } from '../assessment/field-limits.js';
import type { Fault } from '../refusal/refusal.js';
import { findSafetyItem } from './conduct.js';

/**
 * Checks the items of the checklist that were found in a person.
 *
 * @param ids ids of contraindications and signs; empty where none was found or nobody looked (the safety screen says which)
 * @param pointer JSON Pointer of the list, such as `/safetyFindings`
 * @returns a fault for an id that is not on the checklist, for one that cannot be found in a person, and for each repetition
 * @example ['unstable-angina', 'unstable-angina'] -> a fault at /safetyFindings/1: listed-twice
 */
export function checkSafetyFindings(ids: readonly string[], pointer: string): Findings {
  const faults = ids.flatMap((id, index): readonly Fault[] => {
    const at = `${pointer}/${index}`;
    const item = findSafetyItem(id);
    if (item === undefined) {
      return [{ pointer: at, code: 'unknown-finding', message: 'There is no such item on the checklist.' }];
    }
    if (!item.canBeFound) {
      const message =
        'This is a rule and nothing that is found in a person. Name contraindications and signs only.';
      return [{ pointer: at, code: 'not-a-finding', message }];
    }
    if (ids.indexOf(id) === index) return [];
    return [{ pointer: at, code: 'listed-twice', message: 'This stands in the assessment twice.' }];
  });
  return { faults, queries: [] };
}
